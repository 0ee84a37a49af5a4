/**
 * When a floor is bare, in immersed minutes from the first dip (M7.1). With one coat from the peel of its stage to the end of the
 * run; with a new coat for each stage from the first dip to the end of its own stage: then it is coated over, and its depth is final.
 */
import { itemAt } from '#geometry/assert.ts';
import type { Masking } from '#job/job.ts';

export interface BareSpell {
  readonly from: number;
  readonly to: number;
}

export interface BareAsk {
  readonly masking: Masking;
  /** Minute at which each stage was peeled, one more for now. */
  readonly peeled: readonly number[];
  /** Index of the floor's stage; -1 for land, which is never bare. */
  readonly stage: number;
}

/** What of its spell a floor has had by a minute; as long as nothing where it is still covered then. */
export function bareSpell({ masking, peeled, stage }: BareAsk, until: number): BareSpell {
  if (stage < 0) return { from: until, to: until };
  if (masking === 're-mask') return { from: 0, to: Math.min(itemAt(peeled, stage + 1), until) };
  return { from: Math.min(itemAt(peeled, stage), until), to: until };
}

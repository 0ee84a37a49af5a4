/**
 * A front from openings drawn in a test, deepest level first, timed so that each comes out at its level: on one coat, or
 * masked again for each stage, shallowest first.
 */
import type { EtchFactor } from '#bath/etch-factor.ts';
import { type ContourKit, makeContourKit } from '#front/contours/contour-kit.ts';
import type { Front } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import type { Loop } from '#geometry/span.ts';
import type { Masking } from '#job/job.ts';

export interface DrawnFront {
  readonly stages: readonly { readonly level: number; readonly opening: readonly Loop[] }[];
  readonly masking?: Masking;
  readonly etchFactor?: number | EtchFactor;
  readonly sheet?: readonly Loop[];
  readonly thickness?: number;
}

/** mm/min */
export const RATE = 0.025;

export function frontOf({
  stages,
  masking = 'peel-next',
  etchFactor = 1,
  sheet = [],
  thickness = 6,
}: DrawnFront): Front {
  const deepest = stages[0]?.level ?? 0;
  return {
    stages: stages.map(({ level, opening }, i) => {
      const next = stages[i + 1]?.level ?? 0;
      const minutes = (level - next) / RATE;
      return masking === 're-mask'
        ? { number: stages.length - i, level, base: next, opening, startMinute: next / RATE, minutes }
        : { number: i + 1, level, base: 0, opening, startMinute: (deepest - level) / RATE, minutes };
    }),
    etchFactor: typeof etchFactor === 'number' ? [[0, etchFactor]] : etchFactor,
    rate: RATE,
    sheet,
    thickness,
  };
}

export function kitOf(drawn: DrawnFront): ContourKit {
  return makeContourKit(indexFront(frontOf(drawn)));
}

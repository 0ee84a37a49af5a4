/** The etch of both faces of one sheet: depths at which what is gone from either side meets (M9.5), and slices there. */
import type { ContourKit } from '#front/contours/contour-kit.ts';
import { contourLoops } from '#front/contours/contour-loops.ts';
import type { Loop } from '#geometry/span.ts';
import { momentAt } from './front.ts';

export interface BothFronts {
  readonly near: ContourKit;
  readonly far: ContourKit;
  /** mm; of a tapered sheet the thickest. */
  readonly thickness: number;
}

/** Depths below the near face. */
export interface MeetingDepths {
  readonly from: number;
  readonly to: number;
  /** At which a floor of either face lies. */
  readonly floors: readonly number[];
}

/** Undefined where no place is through; at the end of the run, or at a minute. */
export function meetingDepths(
  { near, far, thickness }: BothFronts,
  minute?: number,
): MeetingDepths | undefined {
  const [nearFloors, farFloors] = [near, far].map(({ index }) =>
    momentAt(index.front, minute).floors.filter((each) => each > 0),
  );
  const from = thickness - Math.max(0, ...(farFloors ?? []));
  const to = Math.max(0, ...(nearFloors ?? []));
  if (from >= to) return undefined;
  return {
    from,
    to,
    floors: [...(nearFloors ?? []), ...(farFloors ?? []).map((floor) => thickness - floor)],
  };
}

/** What is deeper than a depth; above the surface that is the whole sheet. */
export function deeperThan(kit: ContourKit, depth: number, minute?: number): readonly Loop[] {
  return depth < 0 ? kit.index.front.sheet : contourLoops(kit, { depth, minute }).loops;
}

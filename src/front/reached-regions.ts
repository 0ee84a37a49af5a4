/** What the front makes of each region of a plan, against what is asked of it. */

import type { ContourKit } from '#front/contours/contour-kit.ts';
import type { PlannedRegion } from '#plan/etch-plan.ts';
import { type Reached, reachedIn } from './reached.ts';

export function reachedRegions(
  kit: ContourKit,
  regions: readonly PlannedRegion[],
): ReadonlyMap<PlannedRegion['id'], Reached> {
  return new Map(
    regions.map(({ id, loops, area, level, asked }) => {
      // A level may lie off the depth asked by all that the tolerance allows, and a hair more: its own floor counts all the same.
      const floorDepth = Math.min(level, asked.depth - asked.minus);
      const deepestFloor = Math.max(level, asked.depth + asked.plus);
      return [id, reachedIn(kit, { loops, area, level, floorDepth, deepestFloor })];
    }),
  );
}

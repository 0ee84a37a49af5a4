/**
 * A local origin for linework that lies far from the drawing's own, as in survey frames: doubles resolve places near the origin best, and
 * products of coordinates lose digits with the square of the distance. Whole metres, so that putting back rounds nothing.
 */

import { FARTHEST } from '#drawing/drawing-limits.ts';
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { middleTwo } from '#maths/median.ts';
import { FARTHEST_PLACE } from '#units/farthest-place.ts';

/** mm */
const STEP = 1000;

/** Undefined where nothing lies far out but what is itself too large. `curves` and `outOfRange` are boxes in mm. */
export function localOrigin(curves: readonly Box[], outOfRange: readonly Box[]): Point | undefined {
  if (!outOfRange.some(fits)) return undefined;
  const boxes = [...curves, ...outOfRange.filter(fits)];
  const origin = {
    x: middle(boxes.map(({ minX, maxX }) => (minX + maxX) / 2)),
    y: middle(boxes.map(({ minY, maxY }) => (minY + maxY) / 2)),
  };
  const isNear = Math.abs(origin.x) < FARTHEST / 2 && Math.abs(origin.y) < FARTHEST / 2;
  const isLost = Math.max(Math.abs(origin.x), Math.abs(origin.y)) > FARTHEST_PLACE;
  return isNear || isLost ? undefined : origin;
}

function fits(box: Box): boolean {
  return box.maxX - box.minX <= FARTHEST && box.maxY - box.minY <= FARTHEST;
}

/** The median, to a whole step; of an even count the upper of the middle two, for between them may be nothing. */
function middle(values: readonly number[]): number {
  return Math.round((middleTwo(values)?.[1] ?? 0) / STEP) * STEP;
}

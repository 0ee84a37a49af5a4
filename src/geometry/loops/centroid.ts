/** The centroid of an area bounded by lines and arcs: exact, and the same however its border is cut into spans. */
import { boxOfSpans } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, loopsArea } from '#geometry/span.ts';
import { firstMomentBeyond } from './first-moment-beyond.ts';

/** @param loops outer loops counter-clockwise, holes clockwise, of some area */
export function centroidOf(loops: readonly Loop[]): Point {
  const { minX, minY } = boxOfSpans(loops.flat());
  const area = loopsArea(loops);
  return {
    x: minX + firstMomentBeyond(loops, { direction: { x: 1, y: 0 }, from: minX }) / area,
    y: minY + firstMomentBeyond(loops, { direction: { x: 0, y: 1 }, from: minY }) / area,
  };
}

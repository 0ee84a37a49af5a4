/** The sum of tapers at a point: each even between its two points, and held beyond them. */

import { dot, type Point, subtract } from '#geometry/point.ts';
import { hypot } from '#maths/hypot.ts';
import type { Taper } from './taper.ts';

export function taperedAt(tapers: readonly Taper[], at: Point): number {
  return tapers.reduce((sum, taper) => sum + valueAt(taper, at), 0);
}

function valueAt({ from, to, fromValue, toValue }: Taper, at: Point): number {
  const way = subtract(to, from);
  const square = dot(way, way);
  const share = square === 0 ? 0 : dot(subtract(at, from), way) / square;
  return fromValue + (toValue - fromValue) * Math.min(1, Math.max(0, share));
}

/** Distances from the start of a straight way, or of its line, at which the tapers begin to change or stop changing. */
export function taperEndsAlong(tapers: readonly Taper[], start: Point, end: Point): number[] {
  const along = subtract(end, start);
  const length = hypot(along.x, along.y);
  return tapers.flatMap(({ from, to }) => {
    const way = subtract(to, from);
    const pace = dot(along, way) / length;
    return pace === 0 ? [] : [from, to].map((each) => dot(subtract(each, start), way) / pace);
  });
}

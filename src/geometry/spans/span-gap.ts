/** The gap between two spans, exact for lines and arcs; 0 where they meet. */

import { distance, type Point } from '#geometry/point.ts';
import { distanceToSpan, type Span, tangentAlong } from '#geometry/span.ts';
import { SAME_CROSSING } from '#geometry/tolerances.ts';
import { meetSpans } from './meet-spans.ts';

export function spanGap(a: Span, b: Span): number {
  if (meetSpans(a, b).length > 0) return 0;
  return Math.min(leastFrom(a, b), leastFrom(b, a));
}

/** Least distance to `to` from the points of `from` where the gap can be least. */
function leastFrom(from: Span, to: Span): number {
  let least = Math.min(distanceToSpan(to, from.start), distanceToSpan(to, from.end));
  for (const place of normalPoints(from, to)) least = Math.min(least, distanceToSpan(to, place));
  return least;
}

/** Where an arc's radius points along the line between both centres, or across the other line; there, beside its ends, its gap can be least. */
export function normalPoints(from: Span, to: Span): Point[] {
  if (from.kind !== 'arc') return [];
  const way = directionTo(from.center, to);
  if (way === undefined) return [];
  return [-from.radius, from.radius]
    .map((side) => ({ x: from.center.x + way.x * side, y: from.center.y + way.y * side }))
    .filter((place) => distanceToSpan(from, place) < SAME_CROSSING);
}

/** Unit direction of the common normal; undefined for arcs about one centre, whose gap is the same all along. */
function directionTo(center: Point, to: Span): Point | undefined {
  if (to.kind === 'line') {
    const along = tangentAlong(to, 0);
    return { x: -along.y, y: along.x };
  }
  const apart = distance(center, to.center);
  if (apart === 0) return undefined;
  return { x: (to.center.x - center.x) / apart, y: (to.center.y - center.y) / apart };
}

/** The gap between two spans, exact for lines and arcs; 0 where they meet. */

import { distance, type Point } from '#geometry/point.ts';
import { distanceToSpan, type Span, tangentAlong } from '#geometry/span.ts';
import { SAME_CROSSING } from '#geometry/tolerances.ts';
import { meetSpans } from './meet-spans.ts';

export function spanGap(a: Span, b: Span): number {
  if (meetSpans(a, b).length > 0) return 0;
  return Math.min(leastFrom(a, b), leastFrom(b, a));
}

/**
 * Least distance to `to` from the points of `from` where the gap can be least: its ends, and, where it is an arc, where its
 * radius points along the line between both centres, or across the other line.
 */
function leastFrom(from: Span, to: Span): number {
  let least = Math.min(distanceToSpan(to, from.start), distanceToSpan(to, from.end));
  if (from.kind !== 'arc') return least;
  const way = directionTo(from.center, to);
  if (way === undefined) return least;
  for (const side of [-from.radius, from.radius]) {
    const point = { x: from.center.x + way.x * side, y: from.center.y + way.y * side };
    if (distanceToSpan(from, point) < SAME_CROSSING) least = Math.min(least, distanceToSpan(to, point));
  }
  return least;
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

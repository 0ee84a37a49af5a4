/** Where whole lines and circles cross. Differences of squares are taken as products, which keeps digits near a touch. */

import { add, cross, distance, dot, type Point, scale, subtract } from '#geometry/point.ts';
import type { ArcSpan, LineSpan } from '#geometry/span.ts';
import { hypot } from '#maths/hypot.ts';

/** Half the chord that a line cuts from a circle at a distance from its center; undefined where it misses. All in mm. */
export function halfChord(radius: number, away: number): number | undefined {
  const squared = (radius - away) * (radius + away);
  return squared < 0 ? undefined : Math.sqrt(squared);
}

/** How far from the first center, towards the second, the common chord of two circles lies. All in mm. */
export function chordPlace(apart: number, first: number, second: number): number {
  return (apart + ((first - second) * (first + second)) / apart) / 2;
}

/** Undefined for lines whose directions differ by a sine of `parallel` or less. */
export function crossLines(a: LineSpan, b: LineSpan, parallel = 0): Point | undefined {
  const alongA = subtract(a.end, a.start);
  const alongB = subtract(b.end, b.start);
  const turn = cross(alongA, alongB);
  if (turn === 0 || Math.abs(turn) < parallel * hypot(alongA.x, alongA.y) * hypot(alongB.x, alongB.y))
    return undefined;
  return add(a.start, scale(alongA, cross(subtract(b.start, a.start), alongB) / turn));
}

/** The crossings, against the line's direction first, and the line's point nearest to the center. */
export function crossLineCircle(
  line: LineSpan,
  { center, radius }: ArcSpan,
): { readonly foot: Point; readonly points: readonly Point[] } {
  const along = subtract(line.end, line.start);
  const foot = add(line.start, scale(along, dot(subtract(center, line.start), along) / dot(along, along)));
  const half = halfChord(radius, distance(foot, center));
  if (half === undefined) return { foot, points: [] };
  const step = scale(along, half / hypot(along.x, along.y));
  return { foot, points: [subtract(foot, step), add(foot, step)] };
}

/** The crossings of circles with different centers, right of the way from a to b first. */
export function crossCircles(a: ArcSpan, b: ArcSpan): readonly Point[] {
  const between = subtract(b.center, a.center);
  const apart = hypot(between.x, between.y);
  const along = chordPlace(apart, a.radius, b.radius);
  const half = halfChord(a.radius, along);
  if (half === undefined) return [];
  const unit = scale(between, 1 / apart);
  const foot = add(a.center, scale(unit, along));
  const step = { x: -unit.y * half, y: unit.x * half };
  return [subtract(foot, step), add(foot, step)];
}

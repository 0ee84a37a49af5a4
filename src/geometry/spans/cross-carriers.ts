/** Where whole lines and circles cross. Differences of squares are taken as products, which keeps digits near a touch. */

import { add, distance, dot, type Point, scale, subtract } from '#geometry/point.ts';
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

/** A straight way: where it starts and where it goes from there. */
export interface Way {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

/** How far along each way, in lengths of its own, the lines of two ways cross; undefined where their cross product is under `parallel`. */
export function crossWays(
  a: Way,
  b: Way,
  parallel = 0,
): { readonly onA: number; readonly onB: number } | undefined {
  const turn = a.dx * b.dy - a.dy * b.dx;
  if (turn === 0 || Math.abs(turn) < parallel) return undefined;
  const x = b.x - a.x;
  const y = b.y - a.y;
  return { onA: (x * b.dy - y * b.dx) / turn, onB: (x * a.dy - y * a.dx) / turn };
}

/** Undefined for lines whose directions differ by a sine of less than `parallel`. */
export function crossLines(a: LineSpan, b: LineSpan, parallel = 0): Point | undefined {
  const [alongA, alongB] = [wayOf(a), wayOf(b)];
  const lengths = hypot(alongA.dx, alongA.dy) * hypot(alongB.dx, alongB.dy);
  const crossing = crossWays(alongA, alongB, parallel * lengths);
  if (crossing === undefined) return undefined;
  return { x: a.start.x + alongA.dx * crossing.onA, y: a.start.y + alongA.dy * crossing.onA };
}

function wayOf({ start, end }: LineSpan): Way {
  return { x: start.x, y: start.y, dx: end.x - start.x, dy: end.y - start.y };
}

/** How far along a way of unit length the center of a circle lies, how far to its right, and half the chord that the way's line cuts there. */
export function chordOnWay(
  { x, y, dx, dy }: Way,
  { center, radius }: { readonly center: Point; readonly radius: number },
): { readonly foot: number; readonly off: number; readonly half: number | undefined } {
  const [ahead, aside] = [center.x - x, center.y - y];
  const off = ahead * dy - aside * dx;
  return { foot: ahead * dx + aside * dy, off, half: halfChord(radius, off) };
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

/** Turning, shifting and turning over without a change of size: how one drawing is brought to another. */
import { cross, distance, dot, type Point, scale, subtract } from '#geometry/point.ts';
import type { Span } from '#geometry/span.ts';

/** Turned over about the x axis first, where it is, then turned, then shifted. */
export interface RigidMotion {
  readonly isMirrored: boolean;
  readonly cos: number;
  readonly sin: number;
  readonly shift: Point;
}

export type PointPair = readonly [Point, Point];

export const STAYING: RigidMotion = { isMirrored: false, cos: 1, sin: 0, shift: { x: 0, y: 0 } };

export function movedPoint({ isMirrored, cos, sin, shift }: RigidMotion, { x, y }: Point): Point {
  const side = isMirrored ? -y : y;
  return { x: cos * x - sin * side + shift.x, y: sin * x + cos * side + shift.y };
}

export function movedSpan(motion: RigidMotion, span: Span): Span {
  const ends = { start: movedPoint(motion, span.start), end: movedPoint(motion, span.end) };
  if (span.kind === 'line') return { ...span, ...ends };
  const sweep = motion.isMirrored ? -span.sweep : span.sweep;
  return { ...span, ...ends, center: movedPoint(motion, span.center), sweep };
}

/** About the line through two points, which are apart. */
export function mirrorAbout([from, to]: PointPair): RigidMotion {
  const way = subtract(to, from);
  const square = dot(way, way);
  const cos = (way.x * way.x - way.y * way.y) / square;
  const sin = (2 * way.x * way.y) / square;
  return shiftedSo({ isMirrored: true, cos, sin, shift: { x: 0, y: 0 } }, from, from);
}

/**
 * The motion that brings two points nearest to two others: their middles on each other, their ways in one direction. `misfit` is
 * how far each is then off, mm.
 */
export function bringTogether(
  points: PointPair,
  onto: PointPair,
  isMirrored: boolean,
): { readonly motion: RigidMotion; readonly misfit: number } {
  const over = { ...STAYING, isMirrored };
  const [from, to] = [movedPoint(over, points[0]), movedPoint(over, points[1])];
  const [way, aim] = [subtract(to, from), subtract(onto[1], onto[0])];
  const lengths = distance(from, to) * distance(onto[0], onto[1]);
  const turned = { ...over, cos: dot(way, aim) / lengths, sin: cross(way, aim) / lengths };
  return {
    motion: shiftedSo(turned, middleOf(points), middleOf(onto)),
    misfit: Math.abs(distance(from, to) - distance(onto[0], onto[1])) / 2,
  };
}

/** The motion that also counts places from elsewhere: `from` before it, `to` after it. */
export function countedFrom(motion: RigidMotion, from: Point, to: Point): RigidMotion {
  return { ...motion, shift: subtract(movedPoint(motion, from), to) };
}

function middleOf([a, b]: PointPair): Point {
  return scale({ x: a.x + b.x, y: a.y + b.y }, 0.5);
}

/** Shifted so that a point comes to its place. */
function shiftedSo(motion: RigidMotion, point: Point, place: Point): RigidMotion {
  return { ...motion, shift: subtract(place, movedPoint({ ...motion, shift: { x: 0, y: 0 } }, point)) };
}

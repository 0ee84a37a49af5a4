/** Carriers: the whole line or circle that a span lies on, and how edges of the grid fit them. */

import { chordsPerTurn } from '#geometry/grow/grid-polygons.ts';
import { add, cross, distance, dot, type Point, scale, subtract } from '#geometry/point.ts';
import { type ArcSpan, distanceToSpan, type LineSpan, type Span } from '#geometry/span.ts';
import { ON_CARRIER, PARALLEL, PAST_END, TOUCHING } from '#geometry/tolerances.ts';
import { hypot } from '#maths/hypot.ts';
import { cos } from '#maths/sine.ts';
import { chordPlace, crossCircles, crossLineCircle, crossLines } from './cross-carriers.ts';

/** A carrier that edges of the grid are fitted to. */
export interface FittedCarrier {
  readonly span: Span;
  /** mm that an edge may lie inside a circle; of a line it says nothing. */
  readonly deepest: number;
}

/** How deep a chord of the grid can lie in the carrier is worked out once. */
export function fittedCarrier(span: Span): FittedCarrier {
  if (span.kind === 'line') return { span, deepest: 0 };
  const halfAngle = (1.2 * Math.PI) / chordsPerTurn(span.radius);
  return { span, deepest: span.radius * (1 - cos(halfAngle)) + ON_CARRIER };
}

/**
 * How badly the edge from `a` to `b` fits the carrier, mm, smaller is better; undefined when it does not lie on it, or fits worse than
 * `limit`. Ends of a chord lie on the circle, but where the grid cut a chord they may lie inside by its sagitta.
 */
export function misfit(
  carrier: FittedCarrier,
  a: Point,
  b: Point,
  limit = Number.POSITIVE_INFINITY,
): number | undefined {
  const { span } = carrier;
  const middle = middleOf(a, b);
  const off = misfitAcross(carrier, a, b, middle);
  if (off === undefined || off > limit) return undefined;
  const past = distanceToSpan(span, middle) - Math.abs(offset(span, middle));
  return past > PAST_END ? undefined : off + Math.max(0, past);
}

/** Whether an edge fits the carrier better than `limit`: cheaper than to measure it, for most edges lie well within its ends. */
export function doesFit(carrier: FittedCarrier, a: Point, b: Point, limit: number): boolean {
  const middle = middleOf(a, b);
  const off = misfitAcross(carrier, a, b, middle);
  if (off === undefined || off >= limit) return false;
  if (off < limit - WITHIN && isWellWithin(carrier.span, middle)) return true;
  return (misfit(carrier, a, b) ?? limit) < limit;
}

/** mm, and share of the square of its size: between the ends of a carrier nothing is past them by more, however it is rounded. */
const WITHIN = 1e-6;

function isWellWithin(span: Span, { x, y }: Point): boolean {
  const { start, end } = span;
  if (span.kind === 'line') {
    const [dx, dy] = [end.x - start.x, end.y - start.y];
    const along = (x - start.x) * dx + (y - start.y) * dy;
    const whole = dx * dx + dy * dy;
    return along > WITHIN * whole && along < (1 - WITHIN) * whole;
  }
  const { center, radius, sweep } = span;
  const [dx, dy] = [x - center.x, y - center.y];
  const side = sweep > 0 ? 1 : -1;
  const least = WITHIN * radius * radius;
  return (
    ((start.x - center.x) * dy - (start.y - center.y) * dx) * side > least &&
    (dx * (end.y - center.y) - dy * (end.x - center.x)) * side > least
  );
}

function middleOf(a: Point, b: Point): Point {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

function misfitAcross(
  { span, deepest }: FittedCarrier,
  a: Point,
  b: Point,
  middle: Point,
): number | undefined {
  return span.kind === 'line' ? lineMisfit(span, a, b) : arcMisfit(span, deepest, [a, b, middle]);
}

/** Signed distance from the carrier: for a line positive on its left, for a circle positive inside. */
function offset(carrier: Span, point: Point): number {
  if (carrier.kind === 'arc') return carrier.radius - distance(point, carrier.center);
  const along = subtract(carrier.end, carrier.start);
  return cross(along, subtract(point, carrier.start)) / hypot(along.x, along.y);
}

function lineMisfit(carrier: LineSpan, a: Point, b: Point): number | undefined {
  const first = Math.abs(offset(carrier, a));
  if (first > ON_CARRIER) return undefined;
  const off = Math.max(first, Math.abs(offset(carrier, b)));
  return off > ON_CARRIER ? undefined : off;
}

function arcMisfit(
  carrier: ArcSpan,
  deepest: number,
  [a, b, middle]: readonly [Point, Point, Point],
): number | undefined {
  const first = offset(carrier, a);
  if (first < -ON_CARRIER || first > deepest) return undefined;
  const second = offset(carrier, b);
  if (second < -ON_CARRIER || second > deepest) return undefined;
  const between = offset(carrier, middle);
  if (between < -ON_CARRIER || between > deepest) return undefined;
  return Math.abs(first) + Math.abs(second);
}

/** Whether two carriers are one line or one circle. */
export function sameCarrier(a: Span, b: Span): boolean {
  if (a.kind === 'arc' && b.kind === 'arc') {
    return distance(a.center, b.center) < TOUCHING && Math.abs(a.radius - b.radius) < TOUCHING;
  }
  if (a.kind === 'line' && b.kind === 'line') {
    return [b.start, b.end].every((end) => Math.abs(offset(a, end)) < TOUCHING);
  }
  return false;
}

/** The point of the whole line or circle nearest to the given one. */
export function footOn(carrier: Span, from: Point): Point {
  if (carrier.kind === 'line') {
    const along = subtract(carrier.end, carrier.start);
    return add(carrier.start, scale(along, dot(subtract(from, carrier.start), along) / dot(along, along)));
  }
  const out = subtract(from, carrier.center);
  return add(carrier.center, scale(out, carrier.radius / hypot(out.x, out.y)));
}

/**
 * Where two carriers cross or touch, nearest to `near`. Undefined for parallels, for concentric circles, and where they miss
 * each other, however narrowly: no point is on both then.
 */
export function crossCarriers(a: Span, b: Span, near: Point): Point | undefined {
  if (a.kind === 'line') {
    return b.kind === 'line' ? crossLines(a, b, PARALLEL) : nearest(lineOnCircle(a, b), near);
  }
  return nearest(b.kind === 'line' ? lineOnCircle(b, a) : circleOnCircle(a, b), near);
}

/** A line that just misses the circle touches it. */
function lineOnCircle(line: LineSpan, circle: ArcSpan): readonly Point[] {
  const { foot, points } = crossLineCircle(line, circle);
  if (points.length > 0) return points;
  return distance(foot, circle.center) - circle.radius < TOUCHING ? [foot] : [];
}

function circleOnCircle(a: ArcSpan, b: ArcSpan): readonly Point[] {
  const between = subtract(b.center, a.center);
  const apart = hypot(between.x, between.y);
  if (apart < PARALLEL * Math.max(a.radius, b.radius)) return [];
  const points = crossCircles(a, b);
  if (points.length > 0) return points;
  const foot = add(a.center, scale(between, chordPlace(apart, a.radius, b.radius) / apart));
  return distance(footOn(a, foot), footOn(b, foot)) < TOUCHING ? [footOn(a, foot)] : [];
}

function nearest(candidates: readonly Point[], near: Point): Point | undefined {
  let best: Point | undefined;
  for (const each of candidates) {
    if (best === undefined || distance(each, near) < distance(best, near)) best = each;
  }
  return best;
}

/** Carriers: the whole line or circle that a span lies on, and how edges of the grid fit them. */

import { chordsPerTurn } from '#geometry/grow/grid-polygons.ts';
import { add, cross, distance, dot, type Point, scale, subtract } from '#geometry/point.ts';
import { type ArcSpan, distanceToSpan, type LineSpan, type Span } from '#geometry/span.ts';
import { ON_CARRIER, PARALLEL, PAST_END, TOUCHING } from '#geometry/tolerances.ts';
import { hypot } from '#maths/hypot.ts';
import { cos } from '#maths/sine.ts';
import { chordPlace, crossCircles, crossLineCircle, crossLines } from './cross-carriers.ts';

/**
 * How badly the edge from `a` to `b` fits the carrier, mm, smaller is better; undefined when it does not lie on it.
 * Ends of a chord lie on the circle, but where the grid cut a chord they may lie inside by its sagitta.
 */
export function misfit(carrier: Span, a: Point, b: Point): number | undefined {
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const off = carrier.kind === 'line' ? lineMisfit(carrier, a, b) : arcMisfit(carrier, a, b, middle);
  if (off === undefined) return undefined;
  const past = distanceToSpan(carrier, middle) - Math.abs(offset(carrier, middle));
  return past > PAST_END ? undefined : off + Math.max(0, past);
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

/** Of the radius: no chord lies deeper in its circle, be it ever so coarse. */
const DEEPEST_CHORD = 0.11;

function arcMisfit(carrier: ArcSpan, a: Point, b: Point, middle: Point): number | undefined {
  const first = offset(carrier, a);
  if (first < -ON_CARRIER || first > DEEPEST_CHORD * carrier.radius + ON_CARRIER) return undefined;
  const halfAngle = (1.2 * Math.PI) / chordsPerTurn(carrier.radius);
  const deepest = carrier.radius * (1 - cos(halfAngle)) + ON_CARRIER;
  let off = 0;
  for (const point of [a, b, middle]) {
    const inside = offset(carrier, point);
    if (inside < -ON_CARRIER || inside > deepest) return undefined;
    if (point !== middle) off += Math.abs(inside);
  }
  return off;
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

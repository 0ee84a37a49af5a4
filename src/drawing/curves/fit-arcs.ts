/**
 * Puts a smooth curve into true arcs within a tolerance: pairs of arcs (biarcs) that meet tangentially, take the curve's own
 * points and directions at their ends, and reach as far as every sample lies within tolerance. Neighbours on one circle or line
 * are joined again, so that a spline that is a circle comes out as one. The ends of the chain are the ends of the curve.
 * Construction: Bolton, Biarc curves, Computer-Aided Design 7(2), 1975; with equal tangent lengths.
 */

import { MOST_FAILED_FITS_A_CURVE, MOST_SPANS_A_CURVE } from '#drawing/drawing-limits.ts';
import { itemAt } from '#geometry/assert.ts';
import { distance, type Point } from '#geometry/point.ts';
import { type ArcSpan, lineSpan, type Span, spanFromBulge } from '#geometry/span.ts';
import {
  CURVE_CORNER,
  CURVE_FIT,
  SAME_SUM,
  SHORTEST_CHORD,
  SHORTEST_RANGE,
  STRAIGHT,
} from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import { hypot } from '#maths/hypot.ts';
import { root } from '#maths/root.ts';
import { tan } from '#maths/tangent.ts';
import { joinSpans } from './join-spans.ts';
import type { CurvePoint, SmoothCurve } from './smooth-curve.ts';

/** Between two samples the distance can be a little more than at either; with eight or more a biarc, less than this share. */
const SAMPLED = 0.9;
/** mm. What the samples may be off. */
const MOST_ERROR = CURVE_FIT * SAMPLED;
const SAMPLES_A_RANGE = 16;
const SAMPLES_A_PIECE = 6;
/** A biarc follows its curve only while that turns less than this. */
const MOST_TURN = Math.PI / 2;
/** mm. Stands for "no arcs at all": half the range is tried next. */
const NO_FIT = 8 * CURVE_FIT;
/** Shares of a segment. */
const DIRECTION_STEPS = [1e-4, 1e-3, 1e-2, 1e-1];

/** Counts what was tried in vain, over all curves of a drawing. */
export interface FitEffort {
  failed: number;
}

/**
 * The curve in lines and arcs; undefined when it would take more than `MOST_SPANS_A_CURVE`, or when ranges are narrowed more
 * than `MOST_FAILED_FITS_A_CURVE` times.
 */
export function fitArcs(curve: SmoothCurve, effort: FitEffort = { failed: 0 }): Span[] | undefined {
  const fitted: Span[] = [];
  const most = effort.failed + MOST_FAILED_FITS_A_CURVE;
  for (const run of smoothRuns(curve)) {
    for (const spans of fitRun(curve, run, effort)) {
      for (const span of spans) fitted.push(span);
      if (fitted.length > MOST_SPANS_A_CURVE || effort.failed > most) return undefined;
    }
  }
  return joinSpans(fitted);
}

/** Spans of one range after the other; none where a range has to be narrowed, or where the curve stands still: both count as failed. */
function* fitRun(
  curve: SmoothCurve,
  [from, to]: readonly [from: number, to: number],
  effort: FitEffort,
): Generator<readonly Span[]> {
  let reached = from;
  let step = to - from;
  while (reached < to) {
    const left = to - reached;
    // The last two steps share what is left, so that no sliver remains.
    const next = step >= left ? to : reached + (step * 2 > left ? left / 2 : step);
    const fit = fitRange(curve, reached, next);
    step = (next - reached) * stepFactor(fit);
    const { spans = [] } = fit;
    if (spans.length === 0) effort.failed += 1;
    if (fit.spans !== undefined) reached = next;
    yield spans;
  }
}

interface RangeFit {
  /** Undefined when they would leave the tolerance. */
  readonly spans: readonly Span[] | undefined;
  /** mm. Largest distance of a sample. */
  readonly error: number;
}

/** The error of a biarc goes with the cube of its length: how much longer or shorter the next range may be. */
function stepFactor({ spans, error }: RangeFit): number {
  const ideal = 0.95 * root(Math.min(100, Math.max(0.001, MOST_ERROR / error)), 3);
  return spans === undefined ? Math.min(0.7, Math.max(0.1, ideal)) : Math.min(4, ideal);
}

/** Runs of segments without a corner inside. */
function smoothRuns(curve: SmoothCurve): [from: number, to: number][] {
  const runs: [number, number][] = [];
  let from = 0;
  for (let segment = 1; segment < curve.segments; segment++) {
    const before = directionAt(curve, segment, segment - 1);
    const after = directionAt(curve, segment, segment);
    if (Math.abs(turnBetween(before, after)) > CURVE_CORNER) {
      runs.push([from, segment]);
      from = segment;
    }
  }
  runs.push([from, curve.segments]);
  return runs;
}

/** One line or two arcs over the range. */
function fitRange(curve: SmoothCurve, from: number, to: number): RangeFit {
  const samples = sampleRange(curve, from, to);
  const start = itemAt(samples, 0);
  const end = itemAt(samples, samples.length - 1);
  if (isStraight(samples)) return { spans: [lineSpan(plain(start), plain(end))], error: 0 };
  if (isStationary(samples)) {
    return { spans: distance(start, end) === 0 ? [] : [lineSpan(plain(start), plain(end))], error: 0 };
  }
  if (to - from < SHORTEST_RANGE) {
    return { spans: distance(start, end) === 0 ? [] : [lineSpan(plain(start), plain(end))], error: 0 };
  }
  if (turnOf(samples) > MOST_TURN) return { spans: undefined, error: NO_FIT };
  const startDirection = directionAt(curve, from, Math.floor(from));
  const endDirection = directionAt(curve, to, Math.ceil(to) - 1);
  const arcs = biarc(plain(start), startDirection, plain(end), endDirection);
  if (arcs === undefined) return { spans: undefined, error: NO_FIT };
  let error = 0;
  for (const sample of samples) error = Math.max(error, distanceFrom(arcs, sample));
  return { spans: error <= MOST_ERROR ? arcs : undefined, error };
}

function sampleRange(curve: SmoothCurve, from: number, to: number): CurvePoint[] {
  const samples: CurvePoint[] = [];
  const last = Math.ceil(to) - 1;
  const steps = Math.max(SAMPLES_A_PIECE, Math.ceil(SAMPLES_A_RANGE / (last - Math.floor(from) + 1)));
  for (let segment = Math.floor(from); segment <= last; segment++) {
    const low = Math.max(from, segment) - segment;
    const high = Math.min(to, segment + 1) - segment;
    for (let step = samples.length === 0 ? 0 : 1; step <= steps; step++) {
      samples.push(curve.at(segment, step === steps ? high : low + ((high - low) * step) / steps));
    }
  }
  return samples;
}

function plain({ x, y }: CurvePoint): Point {
  return { x, y };
}

/** The curve stands still: the whole range is one place. */
function isStationary(samples: readonly CurvePoint[]): boolean {
  const start = itemAt(samples, 0);
  return samples.every((sample) => distance(start, sample) <= SAME_SUM);
}

/** All samples on the chord, and going forward along it. */
function isStraight(samples: readonly CurvePoint[]): boolean {
  const start = itemAt(samples, 0);
  const end = itemAt(samples, samples.length - 1);
  const length = distance(start, end);
  if (length === 0) return false;
  const x = (end.x - start.x) / length;
  const y = (end.y - start.y) / length;
  let reached = 0;
  for (const sample of samples) {
    const along = (sample.x - start.x) * x + (sample.y - start.y) * y;
    const aside = (sample.x - start.x) * y - (sample.y - start.y) * x;
    if (Math.abs(aside) > STRAIGHT || along < reached - STRAIGHT) return false;
    reached = along;
  }
  return true;
}

/** How far the samples' directions turn in all, radians. */
function turnOf(samples: readonly CurvePoint[]): number {
  let turn = 0;
  for (let n = 1; n < samples.length; n++) {
    const before = itemAt(samples, n - 1);
    const after = itemAt(samples, n);
    turn += Math.abs(turnBetween({ x: before.dx, y: before.dy }, { x: after.dx, y: after.dy }));
  }
  return turn;
}

function turnBetween(a: Point, b: Point): number {
  return atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);
}

/** Unit direction at `u` as seen from inside a segment; where the derivative vanishes, the direction towards a near point. */
function directionAt(curve: SmoothCurve, u: number, segment: number): Point {
  const share = u - segment;
  const here = curve.at(segment, share);
  const sign = share > 0.5 ? -1 : 1;
  const length = hypot(here.dx, here.dy);
  // The higher the derivative that is the first not to vanish, the farther off is the first point that differs from this one.
  for (const step of DIRECTION_STEPS) {
    const near = curve.at(segment, share + step * sign);
    const chord = { x: ((near.x - here.x) * sign) / step, y: ((near.y - here.y) * sign) / step };
    const chordLength = hypot(chord.x, chord.y);
    if (length > 1e-3 * chordLength && length > 0) return { x: here.dx / length, y: here.dy / length };
    if (chordLength * step > SHORTEST_CHORD) return { x: chord.x / chordLength, y: chord.y / chordLength };
  }
  return { x: 1, y: 0 };
}

/** Two arcs from p with direction s to q with direction t, tangent to each other. Undefined when they would turn back. */
function biarc(p: Point, s: Point, q: Point, t: Point): Span[] | undefined {
  const v = { x: q.x - p.x, y: q.y - p.y };
  const vv = v.x * v.x + v.y * v.y;
  const along = v.x * (s.x + t.x) + v.y * (s.y + t.y);
  if (along <= 0) return undefined;
  // The tangent length d solves v² = 2 d v·(s + t)/… ; this form has no difference of near-equal terms for near-parallel ends.
  const apart = (s.x - t.x) * (s.x - t.x) + (s.y - t.y) * (s.y - t.y);
  const d = vv / (along + Math.sqrt(along * along + apart * vv)) || 0;
  if (!(d > 0)) return undefined;
  const joint = { x: (p.x + q.x + d * (s.x - t.x)) / 2, y: (p.y + q.y + d * (s.y - t.y)) / 2 };
  const first = { x: joint.x - p.x, y: joint.y - p.y };
  const second = { x: q.x - joint.x, y: q.y - joint.y };
  // Chord and end tangent make half the sweep, so the bulge is the tangent of half that angle.
  const arcs = [
    spanOf(p, joint, tan(turnBetween(s, first) / 2)),
    spanOf(joint, q, tan(turnBetween(second, t) / 2)),
  ];
  return arcs.every((arc) => arc !== undefined) ? arcs : undefined;
}

function spanOf(start: Point, end: Point, bulge: number): Span | undefined {
  const chord = distance(start, end);
  if (chord === 0 || Math.abs(bulge) > 0.5) return undefined;
  return (Math.abs(bulge) * chord) / 2 < STRAIGHT / 10
    ? lineSpan(start, end)
    : spanFromBulge(start, end, bulge);
}

function distanceFrom(arcs: readonly Span[], sample: CurvePoint): number {
  const first = itemAt(arcs, 0);
  const second = itemAt(arcs, 1);
  const joint = first.end;
  const chord = { x: second.end.x - first.start.x, y: second.end.y - first.start.y };
  const beyond = (sample.x - joint.x) * chord.x + (sample.y - joint.y) * chord.y > 0;
  return offCarrier(beyond ? second : first, sample);
}

/** Distance from the circle or line that carries a span. */
function offCarrier(span: Span, { x, y }: Point): number {
  if (span.kind === 'arc') return offCircle(span, x, y);
  const dx = span.end.x - span.start.x;
  const dy = span.end.y - span.start.y;
  return Math.abs((x - span.start.x) * dy - (y - span.start.y) * dx) / hypot(dx, dy);
}

function offCircle(arc: ArcSpan, x: number, y: number): number {
  return Math.abs(hypot(x - arc.center.x, y - arc.center.y) - arc.radius);
}

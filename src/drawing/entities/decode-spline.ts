/**
 * SPLINE, in the world's frame: control points with knots and weights when it has them, else a smooth cubic through its fit points.
 * A spline whose numbers contradict each other is left out with the reason: half a spline is worse than none.
 */

import type { SplinePrimitive } from '#drawing/curves/curve-primitive.ts';
import { splineThrough } from '#drawing/curves/spline-through.ts';
import { codeAt } from '#drawing/read/tag-table.ts';
import type { SplineProblem } from '#findings/entity-findings.ts';
import { itemAt } from '#geometry/assert.ts';
import { distance, type Point } from '#geometry/point.ts';
import { FLAT, SHORTEST_SPAN, SILENT_JOIN, UPRIGHT } from '#geometry/tolerances.ts';
import { hypot } from '#maths/hypot.ts';
import type { Decoded } from './decoded.ts';
import { arePairsWhole, type EntityTags, flagsOf, pointOf, report, strictNumber } from './entity-tags.ts';

interface SplineGroups {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly weights: readonly number[];
  readonly points: readonly Point[];
  readonly fitPoints: readonly Point[];
  readonly rise: number;
}

const CLOSED = 1;
/** The highest degree that the format's own programs write is 25. */
const HIGHEST_DEGREE = 25;

export function decodeSpline(entity: EntityTags): Decoded {
  const groups = readGroups(entity);
  if (groups === undefined) return undefined;
  const rise = groups.rise * entity.millimetres;
  if (rise > FLAT) report(entity, 'entity-not-flat', { rise });
  const primitive = groups.points.length > 0 ? controlled(entity, groups) : interpolated(entity, groups);
  const primitives = primitive && splitAtFullKnots(entity, primitive);
  if (primitive === undefined || primitives === undefined) return undefined;
  const first = itemAt(primitive.points, 0);
  if (primitive.points.every((point) => distance(point, first) * entity.millimetres < SHORTEST_SPAN)) {
    report(entity, 'entity-without-size', { what: 'all points in one place' });
    return undefined;
  }
  return { what: 'curve', primitives };
}

function readGroups(entity: EntityTags): SplineGroups | undefined {
  const lists = new Map<number, number[]>([10, 20, 30, 11, 21, 31, 40, 41].map((code) => [code, []]));
  let degree = 3;
  for (let at = entity.first; at < entity.headEnd; at++) {
    const code = codeAt(entity.tags, at);
    if (code === 71) degree = strictNumber(entity, at);
    else lists.get(code)?.push(strictNumber(entity, at));
  }
  const list = (code: number): number[] => lists.get(code) ?? [];
  if (!arePairsWhole(entity, 10) || !arePairsWhole(entity, 11)) {
    report(entity, 'entity-incomplete', { lacks: 'an x or y of a point' });
    return undefined;
  }
  const points = pointsFrom(list(10), list(20));
  const fitPoints = pointsFrom(list(11), list(21));
  const heights = points.length > 0 ? list(30) : list(31);
  const rise = heights.length === 0 ? 0 : highest(heights) + highest(heights.map((height) => -height));
  return { degree, knots: list(40), weights: list(41), points, fitPoints, rise };
}

function pointsFrom(xs: readonly number[], ys: readonly number[]): Point[] {
  return xs.map((x, n) => ({ x, y: itemAt(ys, n) }));
}

function highest(values: readonly number[]): number {
  return values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
}

function controlled(entity: EntityTags, groups: SplineGroups): SplinePrimitive | undefined {
  const { degree, points, weights, knots } = groups;
  const count = points.length;
  if (!Number.isInteger(degree) || degree < 1 || degree > HIGHEST_DEGREE) {
    return refuse(entity, 'degree', degree, HIGHEST_DEGREE);
  }
  if (count <= degree) return refuse(entity, 'too few points', count, degree + 1);
  if (knots.length !== count + degree + 1)
    return refuse(entity, 'knot count', knots.length, count + degree + 1);
  if (weights.length > 0 && weights.length !== count)
    return refuse(entity, 'weight count', weights.length, count);
  const badWeight = weights.find((weight) => !(weight > 0 && Number.isFinite(weight)));
  if (badWeight !== undefined) return refuse(entity, 'weight', badWeight, 0);
  if (!checkKnots(entity, groups)) return undefined;
  return { kind: 'spline', degree, knots, points, weights: weights.length > 0 ? weights : undefined };
}

/** Knots may not fall, nor repeat more often than degree + 1 times: inside the curve then consists of two. */
function checkKnots(entity: EntityTags, { degree, knots }: SplineGroups): boolean {
  let repeats = 1;
  for (let n = 1; n < knots.length; n++) {
    const step = itemAt(knots, n) - itemAt(knots, n - 1);
    if (!(step >= 0)) {
      refuse(entity, 'knots fall', n + 1, 0);
      return false;
    }
    repeats = step === 0 ? repeats + 1 : 1;
    if (repeats > degree + 1) {
      refuse(entity, 'knots repeat', repeats, degree + 1);
      return false;
    }
  }
  return true;
}

/**
 * Where an inner knot repeats degree + 1 times the curve is two curves end to end; they must meet. What comes after starts with
 * the control point that has the number of the knot (The NURBS Book, section 2.4: basis functions at a full knot).
 */
function splitAtFullKnots(entity: EntityTags, whole: SplinePrimitive): SplinePrimitive[] | undefined {
  const { degree, knots, points, weights } = whole;
  const primitives: SplinePrimitive[] = [];
  let from = 0;
  let joint: Point | undefined;
  const cut = (to: number): void => {
    const own = points.slice(from, to);
    primitives.push({
      kind: 'spline',
      degree,
      knots: knots.slice(from, to + degree + 1),
      points: joint === undefined ? own : [joint, ...own.slice(1)],
      weights: weights?.slice(from, to),
    });
  };
  for (let at = degree + 1; at < points.length; at++) {
    if (itemAt(knots, at) !== itemAt(knots, at + degree) || itemAt(knots, at) === itemAt(knots, at - 1))
      continue;
    const [before, after] = [itemAt(points, at - 1), itemAt(points, at)];
    if (distance(before, after) * entity.millimetres > SILENT_JOIN) {
      return refuse(entity, 'torn', degree + 1, degree);
    }
    cut(at);
    from = at;
    joint = before;
  }
  cut(points.length);
  return primitives.length === 1 ? [whole] : primitives;
}

function refuse(entity: EntityTags, problem: SplineProblem, found: number, wanted: number): undefined {
  report(entity, 'spline-unusable', { problem, found, wanted });
  return undefined;
}

function interpolated(entity: EntityTags, { fitPoints }: SplineGroups): SplinePrimitive | undefined {
  const points = fitPoints.filter(
    (point, n) => n === 0 || distance(point, itemAt(fitPoints, n - 1)) * entity.millimetres >= SHORTEST_SPAN,
  );
  if (points.length < 2) return refuse(entity, 'too few points', points.length, 2);
  const closed =
    points.length > 2 &&
    distance(itemAt(points, 0), itemAt(points, points.length - 1)) * entity.millimetres <= SILENT_JOIN;
  const loop = closed ? points.slice(0, -1) : points;
  report(entity, 'spline-through-points', { points: fitPoints.length });
  return splineThrough({
    points: loop,
    closed: closed || (flagsOf(entity, 70) & CLOSED) !== 0,
    startDirection: directionOf(entity, 12),
    endDirection: directionOf(entity, 13),
  });
}

function directionOf(entity: EntityTags, code: number): Point | undefined {
  const vector = pointOf(entity, code);
  if (vector === undefined) return undefined;
  const length = hypot(vector.x, vector.y);
  return length > UPRIGHT ? { x: vector.x / length, y: vector.y / length } : undefined;
}

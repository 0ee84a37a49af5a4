/**
 * What entities are made of before they become lines and arcs: four kinds of primitive, each of which stays its own kind under
 * any affine map (an arc by its bulge excepted, which becomes a conic when scales differ). So blocks may be scaled, turned and
 * mirrored as they like, and curves are put into arcs once, at the end, in millimetres.
 */

import type { Point } from '#geometry/point.ts';
import { atan } from '#maths/arc-tangent.ts';
import { type Affine, determinant, keepsCircles, mapPoint, mapVector } from './affine.ts';

interface LinePrimitive {
  readonly kind: 'line';
  readonly start: Point;
  readonly end: Point;
}

/** Arc between exact ends; bulge = tan(sweep / 4), any size. */
export interface BulgePrimitive {
  readonly kind: 'bulge';
  readonly start: Point;
  readonly end: Point;
  readonly bulge: number;
}

/** The points center + across·cos t + up·sin t for t from `from` to `from + sweep`, 0 < |sweep| ≤ 2π. */
export interface ConicPrimitive {
  readonly kind: 'conic';
  readonly center: Point;
  readonly across: Point;
  readonly up: Point;
  readonly from: number;
  readonly sweep: number;
  /** The exact ends, where the conic came from an arc between given points. */
  readonly ends?: { readonly start: Point; readonly end: Point };
}

/** A B-spline, rational when it has weights. Its knots were checked. */
export interface SplinePrimitive {
  readonly kind: 'spline';
  readonly degree: number;
  readonly knots: readonly number[];
  readonly points: readonly Point[];
  readonly weights: readonly number[] | undefined;
}

export type CurvePrimitive = LinePrimitive | BulgePrimitive | ConicPrimitive | SplinePrimitive;

export function mapPrimitive(map: Affine, primitive: CurvePrimitive): CurvePrimitive {
  if (primitive.kind === 'line')
    return { kind: 'line', start: mapPoint(map, primitive.start), end: mapPoint(map, primitive.end) };
  if (primitive.kind === 'bulge') return mapBulge(map, primitive);
  if (primitive.kind === 'spline')
    return { ...primitive, points: primitive.points.map((point) => mapPoint(map, point)) };
  const { center, across, up, from, sweep, ends } = primitive;
  const mapped = { center: mapPoint(map, center), across: mapVector(map, across), up: mapVector(map, up) };
  const conic: ConicPrimitive = { kind: 'conic', ...mapped, from, sweep };
  if (ends === undefined) return conic;
  return { ...conic, ends: { start: mapPoint(map, ends.start), end: mapPoint(map, ends.end) } };
}

function mapBulge(map: Affine, primitive: BulgePrimitive): CurvePrimitive {
  if (!keepsCircles(map)) return mapPrimitive(map, conicFromBulge(primitive));
  const bulge = determinant(map) < 0 ? -primitive.bulge : primitive.bulge;
  return { kind: 'bulge', start: mapPoint(map, primitive.start), end: mapPoint(map, primitive.end), bulge };
}

function conicFromBulge({ start, end, bulge }: BulgePrimitive): ConicPrimitive {
  // The centre lies on the chord's normal, (1 − b²) / (4 b) chord lengths to the left (from sagitta = b · chord / 2).
  const offset = (1 - bulge * bulge) / (4 * bulge);
  const center = {
    x: (start.x + end.x) / 2 - (end.y - start.y) * offset,
    y: (start.y + end.y) / 2 + (end.x - start.x) * offset,
  };
  const across = { x: start.x - center.x, y: start.y - center.y };
  const up = { x: -across.y, y: across.x };
  return { kind: 'conic', center, across, up, from: 0, sweep: 4 * atan(bulge), ends: { start, end } };
}

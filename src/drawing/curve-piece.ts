/**
 * What entities are made of before they become lines and arcs: four kinds of piece, each of which stays its own kind under
 * any affine map (an arc by its bulge excepted, which becomes a conic when scales differ). So blocks may be scaled, turned and
 * mirrored as they like, and curves are put into arcs once, at the end, in millimetres.
 */

import type { Point } from '#geometry/point.ts';
import { atan } from '#maths/arc-tangent.ts';
import { type Affine, determinant, keepsCircles, mapPoint, mapVector } from './affine.ts';

interface LinePiece {
  readonly kind: 'line';
  readonly start: Point;
  readonly end: Point;
}

/** Arc between exact ends; bulge = tan(sweep / 4), any size. */
export interface BulgePiece {
  readonly kind: 'bulge';
  readonly start: Point;
  readonly end: Point;
  readonly bulge: number;
}

/** The points center + across·cos t + up·sin t for t from `from` to `from + sweep`, 0 < |sweep| ≤ 2π. */
export interface ConicPiece {
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
export interface SplinePiece {
  readonly kind: 'spline';
  readonly degree: number;
  readonly knots: readonly number[];
  readonly points: readonly Point[];
  readonly weights: readonly number[] | undefined;
}

export type CurvePiece = LinePiece | BulgePiece | ConicPiece | SplinePiece;

export function mapPiece(map: Affine, piece: CurvePiece): CurvePiece {
  if (piece.kind === 'line')
    return { kind: 'line', start: mapPoint(map, piece.start), end: mapPoint(map, piece.end) };
  if (piece.kind === 'bulge') return mapBulge(map, piece);
  if (piece.kind === 'spline') return { ...piece, points: piece.points.map((point) => mapPoint(map, point)) };
  const { center, across, up, from, sweep, ends } = piece;
  const mapped = { center: mapPoint(map, center), across: mapVector(map, across), up: mapVector(map, up) };
  const conic: ConicPiece = { kind: 'conic', ...mapped, from, sweep };
  if (ends === undefined) return conic;
  return { ...conic, ends: { start: mapPoint(map, ends.start), end: mapPoint(map, ends.end) } };
}

function mapBulge(map: Affine, piece: BulgePiece): CurvePiece {
  if (!keepsCircles(map)) return mapPiece(map, conicFromBulge(piece));
  const bulge = determinant(map) < 0 ? -piece.bulge : piece.bulge;
  return { kind: 'bulge', start: mapPoint(map, piece.start), end: mapPoint(map, piece.end), bulge };
}

function conicFromBulge({ start, end, bulge }: BulgePiece): ConicPiece {
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

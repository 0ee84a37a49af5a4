/** How far from the origin a curve reaches, by the coordinate that is farthest; NaN and infinite values come out as such. */
import { type Box, boxOfPoints } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import type { Span } from '#geometry/span.ts';
import { cos, sin } from '#maths/sine.ts';
import { areEqualAxes } from './affine.ts';
import type { CurvePiece } from './curve-piece.ts';

/**
 * Before arcs are fitted: splines by their control points, ellipses by their axes. Round arcs only by their centre, a thousandth of
 * it, since a nearly flat arc may well have a distant centre; their ends are looked at as spans.
 */
export function farthestOf(pieces: readonly CurvePiece[]): number {
  let most = 0;
  for (const piece of pieces) most = Math.max(most, farthestOfPiece(piece));
  return most;
}

export function farthestOfSpans(spans: readonly Span[]): number {
  let most = 0;
  for (const { start, end } of spans) {
    most = Math.max(most, Math.abs(start.x), Math.abs(start.y), Math.abs(end.x), Math.abs(end.y));
  }
  return most;
}

function farthestOfPiece(piece: CurvePiece): number {
  if (piece.kind === 'spline') return piece.points.reduce((most, point) => Math.max(most, reach(point)), 0);
  if (piece.kind !== 'conic') return Math.max(reach(piece.start), reach(piece.end));
  const { center, across, up } = piece;
  const size = Math.max(reach(across), reach(up));
  return areEqualAxes(across, up) ? (reach(center) + size) / 1000 : reach(center) + size;
}

function reach({ x, y }: Point): number {
  return Math.max(Math.abs(x), Math.abs(y));
}

/** Where curves lie that could not be taken: by ends and control points, round arcs by three of their points. */
export function boxOfPieces(pieces: readonly CurvePiece[]): Box {
  return boxOfPoints(pieces.flatMap(pointsOfPiece).filter(({ x, y }) => Number.isFinite(x + y)));
}

function pointsOfPiece(piece: CurvePiece): readonly Point[] {
  if (piece.kind === 'spline') return piece.points;
  if (piece.kind !== 'conic') return [piece.start, piece.end];
  const { center, across, up, from, sweep } = piece;
  return [0, 1 / 3, 2 / 3, 1].map((share) => {
    const angle = from + sweep * share;
    return {
      x: center.x + across.x * cos(angle) + up.x * sin(angle),
      y: center.y + across.y * cos(angle) + up.y * sin(angle),
    };
  });
}

/** How far from the origin a curve reaches, by the coordinate that is farthest; NaN and infinite values come out as such. */
import { type Box, boxOfPoints } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import type { Span } from '#geometry/span.ts';
import { cos, sin } from '#maths/sine.ts';
import { areEqualAxes } from './affine.ts';
import type { CurvePrimitive } from './curve-primitive.ts';

/**
 * Before arcs are fitted: splines by their control points, ellipses by their axes. Round arcs only by their centre, a thousandth of
 * it, since a nearly flat arc may well have a distant centre; their ends are looked at as spans.
 */
export function farthestOf(primitives: readonly CurvePrimitive[]): number {
  let most = 0;
  for (const primitive of primitives) most = Math.max(most, farthestOfPrimitive(primitive));
  return most;
}

export function farthestOfSpans(spans: readonly Span[]): number {
  let most = 0;
  for (const { start, end } of spans) {
    most = Math.max(most, Math.abs(start.x), Math.abs(start.y), Math.abs(end.x), Math.abs(end.y));
  }
  return most;
}

function farthestOfPrimitive(primitive: CurvePrimitive): number {
  if (primitive.kind === 'spline')
    return primitive.points.reduce((most, point) => Math.max(most, reach(point)), 0);
  if (primitive.kind !== 'conic') return Math.max(reach(primitive.start), reach(primitive.end));
  const { center, across, up } = primitive;
  const size = Math.max(reach(across), reach(up));
  return areEqualAxes(across, up) ? (reach(center) + size) / 1000 : reach(center) + size;
}

function reach({ x, y }: Point): number {
  return Math.max(Math.abs(x), Math.abs(y));
}

/** Where curves lie that could not be taken: by ends and control points, round arcs by three of their points. */
export function boxOfPrimitives(primitives: readonly CurvePrimitive[]): Box {
  return boxOfPoints(primitives.flatMap(pointsOfPrimitive).filter(({ x, y }) => Number.isFinite(x + y)));
}

function pointsOfPrimitive(primitive: CurvePrimitive): readonly Point[] {
  if (primitive.kind === 'spline') return primitive.points;
  if (primitive.kind !== 'conic') return [primitive.start, primitive.end];
  const { center, across, up, from, sweep } = primitive;
  return [0, 1 / 3, 2 / 3, 1].map((share) => {
    const angle = from + sweep * share;
    return {
      x: center.x + across.x * cos(angle) + up.x * sin(angle),
      y: center.y + across.y * cos(angle) + up.y * sin(angle),
    };
  });
}

/** Drawn curves as DXF: closed polylines with bulges, or exploded into lines and arcs; every coordinate with all its digits. */
import { bulgeOf, type Span, startAngle } from '#geometry/span.ts';
import { drawingText, entity, type Tag, tags } from '#support/drawings/raw-drawing.ts';
import type { DrawnCurve, DrawnSpline } from './drawn-part.ts';

const UNIT_CODES = { mm: 4, in: 1 } as const;
const SPLINE_DEGREE = 3;

export interface DxfForm {
  readonly unit: keyof typeof UNIT_CODES;
  readonly isExploded: boolean;
}

/** @param curves mm */
export function dxfOfCurves(curves: readonly DrawnCurve[], { unit, isExploded }: DxfForm): string {
  const size = unit === 'in' ? 1 / 25.4 : 1;
  const entities = curves.map((curve) => {
    const layer: Tag = [8, curve.layer];
    if ('spline' in curve) return splineEntity(curve.spline, size, layer);
    if (isExploded) return curve.loop.map((span) => spanEntity(span, size, layer)).join('');
    const vertices = curve.loop.map((span) =>
      tags([10, span.start.x * size], [20, span.start.y * size], [42, bulgeOf(span)]),
    );
    return entity('LWPOLYLINE', layer, [90, vertices.length], [70, 1]) + vertices.join('');
  });
  const header: readonly Tag[] = [
    [9, '$INSUNITS'],
    [70, UNIT_CODES[unit]],
  ];
  return drawingText({ header, entities: entities.join('') });
}

function spanEntity(span: Span, size: number, layer: Tag): string {
  if (span.kind === 'line') {
    const { start, end } = span;
    const ends: Tag[] = [
      [10, start.x * size],
      [20, start.y * size],
      [11, end.x * size],
      [21, end.y * size],
    ];
    return entity('LINE', layer, ...ends);
  }
  const degrees = (radians: number) => (((radians * 180) / Math.PI) % 360) + (radians < 0 ? 360 : 0);
  const from = startAngle(span);
  const [first, last] = span.sweep > 0 ? [from, from + span.sweep] : [from + span.sweep, from];
  const circle: Tag[] = [
    [10, span.center.x * size],
    [20, span.center.y * size],
    [40, span.radius * size],
  ];
  return entity('ARC', layer, ...circle, [50, degrees(first)], [51, degrees(last)]);
}

function splineEntity({ points, knots }: DrawnSpline, size: number, layer: Tag): string {
  const head: Tag[] = [layer, [70, 8], [71, SPLINE_DEGREE], [72, knots.length], [73, points.length], [74, 0]];
  const knotTags = knots.map((knot): Tag => [40, knot]);
  const pointTags = points.flatMap(({ x, y }): Tag[] => [
    [10, x * size],
    [20, y * size],
    [30, 0],
  ]);
  return entity('SPLINE', ...head, ...knotTags, ...pointTags);
}

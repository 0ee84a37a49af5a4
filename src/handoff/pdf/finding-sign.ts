/** Signs of how severe a finding is, told apart by shape on any copy: a black octagon, a grey triangle, an empty circle. */
import type { Severity } from '#findings/severity.ts';
import type { Point } from '#geometry/point.ts';
import { arcSpan, lineSpan, type Span } from '#geometry/span.ts';
import { cos, sin } from '#maths/sine.ts';
import { closed } from './part-marks.ts';
import type { Pen } from './pen.ts';
import { INK } from './sheet-ink.ts';

const GREY = '#8a8a8a';
const STROKE = { width: 0.35, color: INK };

export function drawFindingSign(
  pen: Pen,
  severity: Severity,
  {
    at: { x, y },
    half,
    isEmpty = false,
  }: {
    readonly at: Point;
    readonly half: number;
    /** There is none of them. */
    readonly isEmpty?: boolean;
  },
): void {
  const around = (count: number, from: number, radius: number): Span[] => {
    const corners = Array.from({ length: count }, (_, index) => {
      const angle = from + (2 * Math.PI * index) / count;
      return { x: x + radius * cos(angle), y: y + radius * sin(angle) };
    });
    return corners.map((corner, index) => lineSpan(corner, corners[(index + 1) % count] ?? corner));
  };
  if (severity === 'stop') {
    const fill = isEmpty ? '#ffffff' : INK;
    pen.paths([closed(around(8, Math.PI / 8, half))], { fill, stroke: STROKE });
  } else if (severity === 'warn') {
    const spans = around(3, Math.PI / 2, half * 1.1).map(
      (span): Span => ({ ...span, ...lowered(span, half * 0.25) }),
    );
    pen.paths([closed(spans)], { fill: isEmpty ? '#ffffff' : GREY, stroke: STROKE });
  } else {
    const ring = [0, Math.PI].map((from) =>
      arcSpan({ center: { x, y }, radius: half * 0.85, from, sweep: Math.PI }),
    );
    pen.paths([closed(ring)], { stroke: STROKE });
  }
}

function lowered({ start, end }: Span, by: number): { start: Point; end: Point } {
  return { start: { x: start.x, y: start.y - by }, end: { x: end.x, y: end.y - by } };
}

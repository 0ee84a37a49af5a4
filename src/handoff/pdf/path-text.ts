/**
 * The operators that trace a path on a page of a PDF (ISO 32000-1, 8.5.2), as pdfkit writes them: a line each, figures in points to a
 * millionth. Made once for all uses of a path, for it is used up by filling it and traced again to be stroked. Arcs are drawn as cubics
 * that leave them by a tenth of a micrometre at most.
 */

import type { Point } from '#geometry/point.ts';
import { type ArcSpan, type Path, startAngle } from '#geometry/span.ts';
import { CUBIC_FIT } from '#geometry/tolerances.ts';
import { root } from '#maths/root.ts';
import { cos, sin } from '#maths/sine.ts';
import { tan } from '#maths/tangent.ts';

/** PostScript points in a millimetre (ISO 32000-1, 8.3.2.3: a unit is 1/72 inch). */
export const POINTS = 72 / 25.4;
/** What a cubic over a right angle misses, of the radius; over a smaller turn it is less by the sixth power. */
const QUARTER_MISS = 2.73e-4;

/**
 * @param height of the page, mm: its y points down
 * @returns empty where the paths have no spans
 */
export function pathText(paths: readonly Path[], height: number): string {
  const lines: string[] = [];
  for (const { spans, closed } of paths) {
    const [first] = spans;
    if (first === undefined) continue;
    lines.push(`${placeText(first.start.x, first.start.y, height)} m`);
    for (const span of spans) {
      if (span.kind === 'line') lines.push(`${placeText(span.end.x, span.end.y, height)} l`);
      else pushArc(lines, span, height);
    }
    if (closed) lines.push('h');
  }
  return lines.join('\n');
}

function placeText(x: number, y: number, height: number): string {
  return `${toMillionth(x * POINTS)} ${toMillionth((height - y) * POINTS)}`;
}

function toMillionth(figure: number): number {
  return Math.round(figure * 1e6) / 1e6;
}

/** Handles of 4/3 · tan(turn / 4) · radius, along the tangents: the usual cubic through an arc's ends and middle. */
function pushArc(lines: string[], arc: ArcSpan, height: number): void {
  const { center, radius, sweep } = arc;
  const quarters = Math.min(1, root(Math.sqrt(CUBIC_FIT / (QUARTER_MISS * radius)), 3));
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / ((quarters * Math.PI) / 2)));
  const handle = (4 / 3) * tan(Math.abs(sweep) / count / 4) * radius;
  const first = startAngle(arc);
  const side = Math.sign(sweep);
  let from = directionAt(first);
  for (let i = 0; i < count; i++) {
    const to = directionAt(first + sweep * ((i + 1) / count));
    const start = { x: center.x + radius * from.x, y: center.y + radius * from.y };
    const end = i + 1 === count ? arc.end : { x: center.x + radius * to.x, y: center.y + radius * to.y };
    lines.push(
      `${placeText(start.x + -from.y * side * handle, start.y + from.x * side * handle, height)} ` +
        `${placeText(end.x - -to.y * side * handle, end.y - to.x * side * handle, height)} ` +
        `${placeText(end.x, end.y, height)} c`,
    );
    from = to;
  }
}

function directionAt(angle: number): Point {
  return { x: cos(angle), y: sin(angle) };
}

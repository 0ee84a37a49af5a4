/** Exact spans to the contours of the hand-off files and back: vertices with bulges, the DXF convention. */

import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { bulgeOf, type Loop, lineSpan, type Path, type Span, spanFromBulge } from '#geometry/span.ts';
import { NO_BULGE } from '#geometry/tolerances.ts';
import type { Contour } from '#job/formats/plan-file.ts';

export type ContourVertex = Contour['vertices'][number];

/** The contour of a loop: closed, first vertex not repeated, same direction and start. */
export function contourOfLoop(loop: Loop): Contour {
  return { closed: true, vertices: loop.map(vertexOfSpan) };
}

/** The contour of a path; an open one ends with a vertex of bulge 0. */
export function contourOfPath(path: Path): Contour {
  const vertices = path.spans.map(vertexOfSpan);
  const last = path.spans.at(-1);
  if (!path.closed && last !== undefined) vertices.push([last.end.x, last.end.y, 0]);
  return { closed: path.closed, vertices };
}

/** The path that a contour stands for. |bulge| ≤ 1; zero-length lines are left out. */
export function pathOfContour(contour: Contour): Path {
  const { closed, vertices } = contour;
  const spans: Span[] = [];
  const count = closed ? vertices.length : vertices.length - 1;
  for (let index = 0; index < count; index++) {
    const [x, y, bulge] = itemAt(vertices, index);
    const [endX, endY] = itemAt(vertices, (index + 1) % vertices.length);
    if (x === endX && y === endY) continue;
    spans.push(spanOfBulge({ x, y }, { x: endX, y: endY }, bulge));
  }
  return { closed, spans };
}

/** As `spanFromBulge`, but a bulge that bends a metre by less than a nanometre is a line. */
export function spanOfBulge(start: Point, end: Point, bulge: number): Span {
  return Math.abs(bulge) < NO_BULGE ? lineSpan(start, end) : spanFromBulge(start, end, bulge);
}

function vertexOfSpan(span: Span): ContourVertex {
  return [span.start.x, span.start.y, bulgeOf(span)];
}

/** Spans, loops, paths and arrangements moved without turning. */
import type { Arrangement } from '#geometry/arrangement/arrangement.ts';
import type { Point } from '#geometry/point.ts';
import type { Loop, Path, Span } from '#geometry/span.ts';

export function movePoint({ x, y }: Point, by: Point): Point {
  return { x: x + by.x, y: y + by.y };
}

function moveSpan(span: Span, by: Point): Span {
  const ends = { start: movePoint(span.start, by), end: movePoint(span.end, by) };
  return span.kind === 'line'
    ? { ...span, ...ends }
    : { ...span, ...ends, center: movePoint(span.center, by) };
}

export function moveLoop(loop: Loop, by: Point): Loop {
  return loop.map((span) => moveSpan(span, by));
}

export function movePath(path: Path, by: Point): Path {
  return { ...path, spans: moveLoop(path.spans, by) };
}

export function moveArrangement({ vertices, edges, faces }: Arrangement, by: Point): Arrangement {
  return {
    vertices: vertices.map((vertex) => movePoint(vertex, by)),
    edges: edges.map((edge) => ({ ...edge, span: moveSpan(edge.span, by) })),
    faces: faces.map((face) => ({ ...face, loops: face.loops.map((loop) => moveLoop(loop, by)) })),
  };
}

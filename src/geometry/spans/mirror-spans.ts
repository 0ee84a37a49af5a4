/**
 * Spans, loops, paths and arrangements mirrored about a vertical line. Borders are run the other way after it, so that what lay
 * on their left still does: outer loops stay counter-clockwise. Twice about the same line gives back every figure where that line
 * is x = 0; about another, all but rounding.
 */
import type { Arrangement, ArrangementEdge, Face } from '#geometry/arrangement/arrangement.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, type Path, reverseSpans, type Span } from '#geometry/span.ts';

/** @param about x of the mirror line, mm */
export function mirrorPoint({ x, y }: Point, about: number): Point {
  // 0 less x, so that 0 stays 0 and is never −0.
  return { x: 2 * about - x, y };
}

export function mirrorLoop(loop: Loop, about: number): Loop {
  return reverseSpans(loop.map((span) => mirrorSpan(span, about)));
}

export function mirrorPath({ closed, spans }: Path, about: number): Path {
  return { closed, spans: mirrorLoop(spans, about) };
}

/** Each edge keeps its direction: its faces change sides. */
export function mirrorArrangement({ vertices, edges, faces }: Arrangement, about: number): Arrangement {
  return {
    vertices: vertices.map((vertex) => mirrorPoint(vertex, about)),
    edges: edges.map(
      (edge): ArrangementEdge => ({
        ...edge,
        span: mirrorSpan(edge.span, about),
        left: edge.right,
        right: edge.left,
      }),
    ),
    faces: faces.map(
      (face): Face => ({
        ...face,
        borders: face.borders.map((border) =>
          border.map(({ edge, forward }) => ({ edge, forward: !forward })).reverse(),
        ),
        loops: face.loops.map((loop) => mirrorLoop(loop, about)),
      }),
    ),
  };
}

function mirrorSpan(span: Span, about: number): Span {
  const ends = { start: mirrorPoint(span.start, about), end: mirrorPoint(span.end, about) };
  if (span.kind === 'line') return { ...span, ...ends };
  return { ...span, ...ends, center: mirrorPoint(span.center, about), sweep: -span.sweep };
}

/**
 * Linework in an order of its own: each span runs from its lower end to its upper one, and spans follow their geometry.
 * Everything computed from it is then the same, bit for bit, in whatever order and direction the curves were drawn.
 */

import type { Point } from '#geometry/point.ts';
import { reverseSpan, type Span } from '#geometry/span.ts';
import type { SourcedSpan } from './arrangement.ts';

export function canonicalSpans(spans: readonly SourcedSpan[]): SourcedSpan[] {
  return spans
    .map(({ span, source }) => ({
      span: comparePoints(span.start, span.end) > 0 ? reverseSpan(span) : span,
      source,
    }))
    .sort((a, b) => compareSpans(a.span, b.span) || a.source - b.source);
}

/** By x, then y. */
export function comparePoints(a: Point, b: Point): number {
  return a.x - b.x || a.y - b.y;
}

function compareSpans(a: Span, b: Span): number {
  return comparePoints(a.start, b.start) || comparePoints(a.end, b.end) || compareCurves(a, b);
}

function compareCurves(a: Span, b: Span): number {
  if (a.kind === 'line') return b.kind === 'line' ? 0 : -1;
  if (b.kind === 'line') return 1;
  return a.sweep - b.sweep || a.radius - b.radius || comparePoints(a.center, b.center);
}

/** The outline within which an edge is allowed to land. */
import { growSpans } from '#geometry/grow/grow-spans.ts';
import { contourOfLoop, pathOfContour } from '#handoff/contour.ts';
import type { Contour } from '#job/formats/plan-file.ts';

/** Spans above which it is not drawn: nobody could read it. */
const MOST_SPANS = 4000;

/** @param allowed mm to either side */
export function askedOutline(edges: readonly Contour[], allowed: number): readonly Contour[] {
  const spans = edges.flatMap((edge) => pathOfContour(edge).spans);
  if (allowed === 0 || spans.length > MOST_SPANS) return [];
  return growSpans(spans, allowed).map(contourOfLoop);
}

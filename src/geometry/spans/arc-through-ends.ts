/** Arcs whose circle runs through both their ends, so that what spreads from an arc meets what spreads from its neighbours. */

import { distance } from '#geometry/point.ts';
import { bulgeOf, type Span, spanFromBulge } from '#geometry/span.ts';
import { SAME_SUM } from '#geometry/tolerances.ts';

/**
 * The span itself, or where an end stands off its circle (by up to some tenths of a micrometre, where borders that just
 * touch were joined) the arc between the same ends that turns by the same angle.
 */
export function throughEnds(span: Span): Span {
  if (span.kind === 'line') return span;
  const { center, radius, start, end } = span;
  const off = Math.max(Math.abs(distance(start, center) - radius), Math.abs(distance(end, center) - radius));
  return off <= SAME_SUM ? span : spanFromBulge(start, end, bulgeOf(span));
}

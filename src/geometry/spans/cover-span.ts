/** Which parts of a span other spans run along, and the rest: exact, by their common line or circle. */

import { boxesMeet, boxOfSpan, growBox } from '#geometry/box.ts';
import { cross, dot, type Point, subtract } from '#geometry/point.ts';
import { type ArcSpan, type LineSpan, pointAlong, type Span, spanLength } from '#geometry/span.ts';
import { SPECK } from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import { sameCarrier } from './carrier.ts';

export interface CoveredPart {
  readonly span: Span;
  readonly isCovered: boolean;
}

/** The span cut where covering begins and ends, in order. */
export function coverSpan(span: Span, covers: readonly Span[]): CoveredPart[] {
  const box = growBox(boxOfSpan(span), SPECK);
  const least = SPECK / spanLength(span);
  const stretches = covers
    .filter((cover) => boxesMeet(box, boxOfSpan(cover)) && sameCarrier(span, cover))
    .flatMap((cover) => alongOf(span, cover))
    .map(([from, to]) => [Math.max(0, from), Math.min(1, to)] as const)
    .filter(([from, to]) => to - from > least)
    .sort((a, b) => a[0] - b[0]);
  const parts: CoveredPart[] = [];
  let at = 0;
  for (const [from, to] of stretches) {
    if (to - at <= least) continue;
    const hasGap = from - at > least;
    if (hasGap) parts.push({ span: stretchOf(span, at, from), isCovered: false });
    const end = 1 - to > least ? to : 1;
    parts.push({ span: stretchOf(span, hasGap ? from : at, end), isCovered: true });
    at = end;
  }
  if (at < 1) parts.push({ span: stretchOf(span, at, 1), isCovered: false });
  return parts;
}

/** Shares of the span, under 0 and over 1 beyond its ends, between which the cover runs on the same carrier: round a circle of every turn. */
function alongOf(span: Span, cover: Span): (readonly [from: number, to: number])[] {
  if (span.kind === 'line') {
    const ends = [shareOnLine(span, cover.start), shareOnLine(span, cover.end)];
    return [[Math.min(...ends), Math.max(...ends)]];
  }
  if (cover.kind === 'line') return [];
  const begins = angleFrom(span, cover.start) / span.sweep;
  const ends = begins + cover.sweep / span.sweep;
  const turn = (2 * Math.PI) / span.sweep;
  return [-turn, 0, turn].map((by) => [Math.min(begins, ends) + by, Math.max(begins, ends) + by]);
}

function shareOnLine(line: LineSpan, point: Point): number {
  const along = subtract(line.end, line.start);
  return dot(subtract(point, line.start), along) / dot(along, along);
}

function angleFrom(arc: ArcSpan, point: Point): number {
  const from = subtract(arc.start, arc.center);
  const to = subtract(point, arc.center);
  return atan2(cross(from, to), dot(from, to));
}

/** The part of a span between two shares of it; whole ends stay the same points. */
function stretchOf(span: Span, from: number, to: number): Span {
  const start = from === 0 ? span.start : pointAlong(span, from);
  const end = to === 1 ? span.end : pointAlong(span, to);
  if (from === 0 && to === 1) return span;
  if (span.kind === 'line') return { kind: 'line', start, end };
  return { ...span, start, end, sweep: span.sweep * (to - from) };
}

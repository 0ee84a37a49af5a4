/** Arcs that turn by more than spans may, as after joining neighbours on one circle, cut evenly into such that do not. Linear in spans. */
import { type ArcSpan, arcSpan, type Span, startAngle } from '#geometry/span.ts';
import { SAME_COUNT } from '#geometry/tolerances.ts';

/** The same chain of arcs of at most half a turn each. */
export function inHalfTurns(chain: readonly Span[]): Span[] {
  return chain.flatMap((span) => (span.kind === 'arc' ? partsOf(span) : [span]));
}

function partsOf(arc: ArcSpan): Span[] {
  const count = Math.ceil(Math.abs(arc.sweep) / Math.PI - SAME_COUNT);
  if (count <= 1) return [arc];
  const parts: Span[] = [];
  for (let part = 0; part < count; part++) {
    const piece = arcSpan({
      ...arc,
      from: startAngle(arc) + (arc.sweep * part) / count,
      sweep: arc.sweep / count,
    });
    const start = parts.at(-1)?.end ?? arc.start;
    parts.push({ ...piece, start, end: part === count - 1 ? arc.end : piece.end });
  }
  return parts;
}

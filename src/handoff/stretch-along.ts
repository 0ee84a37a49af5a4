/** The part of a chain of spans between two lengths along it; exact, arcs stay arcs. Linear in the spans. */
import { pointAlong, type Span, spanLength } from '#geometry/span.ts';
import { SAME_CROSSING } from '#geometry/tolerances.ts';

/** `from` < `to`, both within the chain's length: what lies beyond is not there. */
export function stretchAlong(
  spans: readonly Span[],
  { from, to }: { readonly from: number; readonly to: number },
): Span[] {
  const parts: Span[] = [];
  let passed = 0;
  for (const span of spans) {
    const length = spanLength(span);
    const first = Math.max(0, from - passed);
    const last = Math.min(length, to - passed);
    if (last - first > SAME_CROSSING) parts.push(partOf(span, first / length, last / length));
    passed += length;
    if (passed >= to) break;
  }
  return parts;
}

function partOf(span: Span, from: number, to: number): Span {
  const start = from === 0 ? span.start : pointAlong(span, from);
  const end = to === 1 ? span.end : pointAlong(span, to);
  return span.kind === 'line'
    ? { kind: 'line', start, end }
    : { ...span, start, end, sweep: span.sweep * (to - from) };
}

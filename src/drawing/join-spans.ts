/** Joins neighbours in a chain that lie on one line or on one circle. Moves nothing by more than `SAME_CARRIER`. */
import { cross, distance, subtract } from '#geometry/point.ts';
import { type ArcSpan, type LineSpan, lineSpan, type Span, spanFromBulge } from '#geometry/span.ts';

/** mm. Circles whose centres and radii differ by less are one. */
const SAME_CARRIER = 1e-6;

export function joinSpans(spans: readonly Span[]): Span[] {
  const joined: Span[] = [];
  for (const span of spans) {
    const last = joined.at(-1);
    const both = last === undefined ? undefined : joinTwo(last, span);
    if (both === undefined) joined.push(span);
    else joined[joined.length - 1] = both;
  }
  return joined;
}

function joinTwo(a: Span, b: Span): Span | undefined {
  if (a.kind === 'line' && b.kind === 'line') return joinLines(a, b);
  if (a.kind === 'arc' && b.kind === 'arc') return joinArcs(a, b);
  return undefined;
}

function joinLines(a: LineSpan, b: LineSpan): Span | undefined {
  const whole = subtract(b.end, a.start);
  const length = Math.hypot(whole.x, whole.y);
  if (length < distance(a.start, a.end) || length < distance(b.start, b.end)) return undefined;
  const aside = Math.abs(cross(whole, subtract(a.end, a.start))) / length;
  return aside <= SAME_CARRIER ? lineSpan(a.start, b.end) : undefined;
}

function joinArcs(a: ArcSpan, b: ArcSpan): Span | undefined {
  const sweep = a.sweep + b.sweep;
  if (Math.sign(a.sweep) !== Math.sign(b.sweep) || Math.abs(sweep) > Math.PI + 1e-9) return undefined;
  const same = distance(a.center, b.center) <= SAME_CARRIER && Math.abs(a.radius - b.radius) <= SAME_CARRIER;
  // Near a half turn and at it, rounding must not push the bulge past 1.
  const bulge = Math.max(-1, Math.min(1, Math.tan(sweep / 4)));
  return same ? spanFromBulge(a.start, b.end, bulge) : undefined;
}

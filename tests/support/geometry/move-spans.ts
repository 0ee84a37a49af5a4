/** Linework moved, turned, mirrored, scaled, or shaken: what an arrangement must not notice. */
import type { SourcedSpan } from '#geometry/arrangement/arrangement.ts';
import type { Point } from '#geometry/point.ts';
import { bulgeOf, reverseSpan, type Span, spanFromBulge } from '#geometry/span.ts';

export interface Movement {
  readonly turn: number;
  readonly factor: number;
  readonly mirrored: boolean;
  readonly shift: Point;
}

export function moveSpan(span: Span, movement: Movement): Span {
  const { turn, factor, mirrored, shift } = movement;
  const [cos, sin] = [Math.cos(turn) * factor, Math.sin(turn) * factor];
  const move = ({ x, y }: Point): Point => {
    const side = mirrored ? -y : y;
    return { x: cos * x - sin * side + shift.x, y: sin * x + cos * side + shift.y };
  };
  if (span.kind === 'line') return { kind: 'line', start: move(span.start), end: move(span.end) };
  return {
    kind: 'arc',
    start: move(span.start),
    end: move(span.end),
    center: move(span.center),
    radius: span.radius * factor,
    sweep: mirrored ? -span.sweep : span.sweep,
  };
}

/** In another order, and every span for which `flips` says so run the other way; sources stay with their spans. */
export function shuffle(
  spans: readonly SourcedSpan[],
  order: readonly number[],
  flips: readonly boolean[],
): SourcedSpan[] {
  return spans
    .map(({ span, source }, i) => ({
      moved: { span: flips[i % flips.length] === true ? reverseSpan(span) : span, source },
      rank: order[i % order.length] ?? 0,
    }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ moved }) => moved);
}

/** Every end moved by itself, as rounding does; an arc keeps its bulge. `offsets` are used round and round. */
export function shake(spans: readonly SourcedSpan[], offsets: readonly Point[]): SourcedSpan[] {
  const shaken = ({ x, y }: Point, at: number): Point => {
    const offset = offsets[at % offsets.length] ?? { x: 0, y: 0 };
    return { x: x + offset.x, y: y + offset.y };
  };
  return spans.map(({ span, source }, i) => ({
    span: spanFromBulge(shaken(span.start, 2 * i), shaken(span.end, 2 * i + 1), bulgeOf(span)),
    source,
  }));
}

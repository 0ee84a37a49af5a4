/**
 * A point well inside a face: the middle of the roomiest stretch that level scan lines cut out of it, moved to the middle
 * of the upright stretch through it. Exact for arcs, and the same however the loops are ordered. Cost: scan lines ×
 * spans; distances are measured only for stretches long enough to win.
 */

import { boxOfSpans } from '#geometry/box.ts';
import { distance, type Point } from '#geometry/point.ts';
import { distanceToSpan, type Loop, type Span } from '#geometry/span.ts';
import { SAME_SHARE } from '#geometry/tolerances.ts';
import { type Stretch, stretchesInside } from './stretches-inside.ts';

/** Scan lines across a face; enough that a face of any ordinary shape has one near its roomiest place. */
const SCAN_LINES = 17;

/** Rounds of centring between left and right, then between top and bottom. */
const CENTRING_ROUNDS = 4;

/** A point inside the loops of one face, as far from them as a few scan lines can find. */
export function labelPoint(loops: readonly Loop[]): Point {
  const spans = loops.flat();
  const box = boxOfSpans(spans);
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  let best = { point: middle, room: 0 };
  for (let line = 0; line < SCAN_LINES; line++) {
    // From the middle outwards, so that of equal places the most central one is kept.
    const step = line % 2 === 0 ? line / 2 : -(line + 1) / 2;
    const y = middle.y + (step * (box.maxY - box.minY)) / (SCAN_LINES + 1);
    for (const { from, to } of stretchesInside(spans, y)) {
      if ((to - from) / 2 <= best.room) continue;
      const point = { x: (from + to) / 2, y };
      const room = roomAt(spans, point, best.room);
      if (room > best.room * (1 + SAME_SHARE)) best = { point, room };
    }
  }
  if (best.room === 0) return anyPoint(spans, middle);
  const center = centred(spans, best.point);
  return roomAt(spans, center, best.room) > best.room * (1 + SAME_SHARE) ? center : best.point;
}

/** The point moved to the middle between its neighbours left and right, above and below, in turn. */
function centred(spans: readonly Span[], from: Point): Point {
  let at = from;
  const turned = spans.map(swapAxes);
  for (let round = 0; round < CENTRING_ROUNDS; round++) {
    const upright = stretchAround(turned, { x: at.y, y: at.x });
    if (upright === undefined) return at;
    const next = { x: at.x, y: (upright.from + upright.to) / 2 };
    const level = stretchAround(spans, next);
    if (level === undefined) return at;
    at = { x: (level.from + level.to) / 2, y: next.y };
  }
  return at;
}

function stretchAround(spans: readonly Span[], { x, y }: Point): Stretch | undefined {
  return stretchesInside(spans, y).find(({ from, to }) => from < x && x < to);
}

/** The span mirrored at the line x = y. */
function swapAxes(span: Span): Span {
  const swap = ({ x, y }: Point): Point => ({ x: y, y: x });
  if (span.kind === 'line') return { kind: 'line', start: swap(span.start), end: swap(span.end) };
  const { radius, sweep } = span;
  const [start, end, center] = [swap(span.start), swap(span.end), swap(span.center)];
  return { kind: 'arc', start, end, center, radius, sweep: -sweep };
}

/** Distance to the nearest span; gives up with less than the least room that matters. */
function roomAt(spans: readonly Span[], point: Point, least: number): number {
  let room = Number.POSITIVE_INFINITY;
  for (const span of spans) {
    if (isFurther(span, point, room)) continue;
    room = Math.min(room, distanceToSpan(span, point));
    if (room < least) return room;
  }
  return room;
}

/** Cheap proof that a span is further away: a line or short arc stays within its length of its start. */
function isFurther(span: Span, point: Point, room: number): boolean {
  const length = span.kind === 'line' ? distance(span.start, span.end) : span.radius * Math.abs(span.sweep);
  return distance(span.start, point) > room + length;
}

/** For a face so thin that no scan line finds it: the middle of its first stretch of border. */
function anyPoint(spans: readonly Span[], middle: Point): Point {
  const first = spans[0];
  if (first === undefined) return middle;
  return { x: (first.start.x + first.end.x) / 2, y: (first.start.y + first.end.y) / 2 };
}

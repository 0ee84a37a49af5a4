/**
 * The stage mark: short ticks across a line, as many in each repeat as the stage's number, grouped in fives, so that a copy
 * without colour still distinguishes the stages. The same on screen, on the template and in print.
 */
import type { Point } from '#geometry/point.ts';
import { pointAlong, type Span, spanLength, spansLength, tangentAlong } from '#geometry/span.ts';

/** A tick: its middle on the line, and the unit direction across the line. */
export interface MarkTick {
  readonly at: Point;
  readonly across: Point;
}

const GROUP = 5;
/** Clear length after a group of five and around a repeat, in pitches: enough to count by eye (our own choice). */
const GROUP_GAP = 2;
const REPEAT_GAP = 8;

/** Places of one repeat's ticks, in tick pitches from its first. */
export function tickPlaces(stage: number): number[] {
  return Array.from({ length: stage }, (_, index) => index + Math.floor(index / GROUP) * (GROUP_GAP - 1));
}

/**
 * Ticks of a stage along a chain of spans; `pitch` is the distance between two ticks of a group. A chain too short for one
 * whole repeat gets none: half a mark would be read as another stage's.
 */
export function stageMark(spans: readonly Span[], mark: { stage: number; pitch: number }): MarkTick[] {
  const places = tickPlaces(mark.stage);
  const width = (places.at(-1) ?? 0) * mark.pitch;
  const length = spansLength(spans);
  const repeats = Math.max(1, Math.floor(length / (width + REPEAT_GAP * mark.pitch)));
  const share = length / repeats;
  if (width > share) return [];
  const distances: number[] = [];
  for (let repeat = 0; repeat < repeats; repeat++) {
    const first = share * repeat + (share - width) / 2;
    for (const place of places) distances.push(first + place * mark.pitch);
  }
  return ticksAt(spans, distances);
}

/** Ticks at rising distances along the chain. */
function ticksAt(spans: readonly Span[], distances: readonly number[]): MarkTick[] {
  const ticks: MarkTick[] = [];
  let passed = 0;
  let next = 0;
  for (const span of spans) {
    const length = spanLength(span);
    for (let at = distances[next]; at !== undefined && at <= passed + length; at = distances[++next]) {
      const share = length > 0 ? (at - passed) / length : 0;
      const along = tangentAlong(span, share);
      ticks.push({ at: pointAlong(span, share), across: { x: -along.y, y: along.x } });
    }
    passed += length;
  }
  return ticks;
}

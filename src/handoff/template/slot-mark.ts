/**
 * The stage mark beside a slot, on the side of the maskant that stays: ticks as many as the stage's number, and where the slot is
 * too short for them, the number.
 */
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { lineSpan, pointAlong, type Span, spansLength, tangentAlong } from '#geometry/span.ts';
import { stretchAlong } from '#handoff/stretch-along.ts';
import { type MarkTick, stageMark, tickPlaces } from '#plan/stage-mark.ts';
import type { InkLine, InkText } from './template-label.ts';
import type { Slot, SlotBand } from './template-set.ts';

/** mm between two ticks, the widest that fits. */
const PITCHES = [2, 1.2, 0.8] as const;
/** mm of slot to a mark, at most: one is always in sight. */
const APART = 60;
/** A mark and what it must have clear around it, in pitches beyond its own width. */
const CLEAR = 6;
/** mm from the slot's edge to the tick; its length is this share of the web, at most so long. */
const OFF = 0.5;
const WEB_SHARE = 0.4;
const LONGEST = 1.8;

export interface SlotMark {
  readonly lines: readonly InkLine[];
  readonly texts: readonly InkText[];
}

export function slotMark({ spans, stage }: Slot, band: SlotBand, web: number): SlotMark {
  const length = Math.min(LONGEST, web * WEB_SHARE);
  for (const pitch of PITCHES) {
    const ticks = marksAlong(spans, stage.number, pitch);
    if (ticks.length === 0) continue;
    const lines = ticks.map(({ at, across }): InkLine => {
      const aside = (by: number): Point => ({ x: at.x + across.x * by, y: at.y + across.y * by });
      const tick = lineSpan(aside(band.low - OFF), aside(band.low - OFF - length));
      return { path: { closed: false, spans: [tick] }, stage };
    });
    return { lines, texts: [] };
  }
  const middle = itemAt(spans, Math.floor(spans.length / 2));
  const { x, y } = pointAlong(middle, 0.5);
  const along = tangentAlong(middle, 0.5);
  const away = band.low - OFF - length;
  const at = { x: x - along.y * away - length / 3, y: y + along.x * away - length / 2 };
  return { lines: [], texts: [{ at, height: length, text: String(stage.number) }] };
}

/** One mark in the middle of each part of the slot. */
function marksAlong(spans: readonly Span[], stage: number, pitch: number): MarkTick[] {
  const length = spansLength(spans);
  const parts = Math.ceil(length / APART);
  const half = (((tickPlaces(stage).at(-1) ?? 0) + CLEAR) * pitch) / 2;
  return Array.from({ length: parts }, (_, part) => (length * (part + 0.5)) / parts).flatMap((middle) => {
    const range = { from: Math.max(0, middle - half), to: Math.min(length, middle + half) };
    return stageMark(stretchAlong(spans, range), { stage, pitch });
  });
}

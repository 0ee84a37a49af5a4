/**
 * The stage marks of a template, beside its slots on the side of the maskant that stays: ticks as many as the stage's number, and
 * where there is no room for them, the number. A mark stands whole or not at all: each tick clear of every slot of the template,
 * of holes, edge and other marks, and apart from its neighbours, since a tick lost in a slot would make it another stage's.
 * Cost: places tried, times the spans and marks near each.
 */
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { lineSpan, type Span, spansLength } from '#geometry/span.ts';
import { spanGap } from '#geometry/spans/span-gap.ts';
import { stretchAlong } from '#handoff/stretch-along.ts';
import { type MarkTick, stageMark, tickPlaces } from '#plan/stage-mark.ts';
import type { InkText, SlotMark } from './ink.ts';
import { type Ground, groundOf, type MarkedSet } from './mark-ground.ts';
import type { Slot, SlotBand } from './template-set.ts';
import { rectangleOf } from './template-sheet.ts';

/** mm between two ticks and share of their whole length, the widest and longest that fit. */
const SIZES = [
  { pitch: 2, share: 1 },
  { pitch: 1.2, share: 1 },
  { pitch: 0.8, share: 1 },
  { pitch: 0.8, share: 0.6 },
  { pitch: 0.8, share: 0.35 },
] as const;
/** mm of slot to a mark, at most: one is always in sight. */
const APART = 60;
/** mm from the slot's edge to the tick; its length is this share of the web, at most so long. */
const OFF = 0.5;
const WEB_SHARE = 0.4;
const LONGEST = 1.8;
/** Of the pitch that must be left between two ticks on the inside of a curve. */
const LEAST_PITCH = 0.5;
/** Places tried to either side of the middle. */
const TRIES = 24;
/** Heights of a number in place of ticks, in their length. */
const HEIGHTS = [1, 0.7, 0.5] as const;
/** No figure is wider than it is high. */
const FIGURE_WIDTH = 1;

/** A mark a slot of the template, in their order; and the ground with the marks on it. */
export function slotMarks(
  set: MarkedSet,
  slots: readonly Slot[],
): { readonly marks: SlotMark[]; readonly ground: Ground } {
  const ground = groundOf(set, slots);
  const length = Math.min(LONGEST, set.input.choices.web * WEB_SHARE);
  const marks = slots.map((slot) => {
    const ticks = ticksBeside(slot, set.band, { length, ground });
    return {
      lines: ticks.map((tick) => ({ path: { closed: false, spans: [tick] }, stage: slot.stage })),
      texts: ticks.length > 0 ? [] : numberBeside(slot, set.band, { length, ground }),
    };
  });
  return { marks, ground };
}

interface Room {
  readonly length: number;
  readonly ground: Ground;
}

/** One mark in each part of the slot that has room for it, all of one size; none where no part has. */
function ticksBeside({ spans, stage }: Slot, band: SlotBand, { length, ground }: Room): Span[] {
  const whole = spansLength(spans);
  const parts = Math.ceil(whole / APART);
  for (const { pitch, share } of SIZES) {
    const width = (tickPlaces(stage.number).at(-1) ?? 0) * pitch;
    const ticks = Array.from({ length: parts }).flatMap((_, part) => {
      const range = { from: (whole * part) / parts, to: (whole * (part + 1)) / parts };
      for (const middle of placesFrom(range, width)) {
        const mark = ticksAbout(spans, { middle, width, pitch, stage: stage.number }).map((tick) =>
          besideSlot(tick, band, length * share),
        );
        if (!areApart(mark, pitch * LEAST_PITCH) || !ground.isClear(mark, OFF)) continue;
        ground.place(mark);
        return mark;
      }
      return [];
    });
    if (ticks.length > 0) return ticks;
  }
  return [];
}

/** Middles of a mark that lies within a part of the slot, from the part's own middle outwards. */
function* placesFrom(
  { from, to }: { readonly from: number; readonly to: number },
  width: number,
): Generator<number, void> {
  const room = (to - from - width) / 2;
  if (room < 0) return;
  const middle = (from + to) / 2;
  yield middle;
  for (let step = 1; step <= TRIES; step++) {
    yield middle + (room * step) / TRIES;
    yield middle - (room * step) / TRIES;
  }
}

function ticksAbout(
  spans: readonly Span[],
  mark: { readonly middle: number; readonly width: number; readonly pitch: number; readonly stage: number },
): MarkTick[] {
  const { middle, width, pitch, stage } = mark;
  // Half a pitch more on either side holds no second mark, and a first one of a single tick.
  const half = width / 2 + pitch / 2;
  const whole = spansLength(spans);
  const by = Math.min(half, middle, whole - middle);
  return stageMark(stretchAlong(spans, { from: middle - by, to: middle + by }), { stage, pitch });
}

function besideSlot({ at, across }: MarkTick, { low }: SlotBand, length: number): Span {
  const aside = (by: number): Point => ({ x: at.x + across.x * by, y: at.y + across.y * by });
  return lineSpan(aside(low - OFF), aside(low - OFF - length));
}

function areApart(ticks: readonly Span[], least: number): boolean {
  return ticks.length > 0 && ticks.slice(1).every((tick, i) => spanGap(itemAt(ticks, i), tick) >= least);
}

function numberBeside({ spans, stage }: Slot, { low }: SlotBand, { length, ground }: Room): InkText[] {
  const text = String(stage.number);
  for (const share of HEIGHTS) {
    const height = length * share;
    const width = height * FIGURE_WIDTH * text.length;
    for (const middle of placesFrom({ from: 0, to: spansLength(spans) }, 0)) {
      const [tick] = ticksAbout(spans, { middle, width: 0, pitch: 0.1, stage: 1 });
      if (tick === undefined) continue;
      const { at, across } = tick;
      // Half of what the words measure across the slot, so that their nearest corner stands off it.
      const half = (Math.abs(across.x) * width + Math.abs(across.y) * height) / 2;
      const center = { x: at.x + across.x * (low - OFF - half), y: at.y + across.y * (low - OFF - half) };
      const box = {
        minX: center.x - width / 2,
        maxX: center.x + width / 2,
        minY: center.y - height / 2,
        maxY: center.y + height / 2,
      };
      const frame = rectangleOf(box);
      if (!ground.isClear(frame, OFF / 2)) continue;
      ground.place(frame);
      return [{ at: { x: box.minX, y: box.minY }, height, text }];
    }
  }
  return [];
}

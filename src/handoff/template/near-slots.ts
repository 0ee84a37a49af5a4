/** Which slots come too near to each other to be cut from one sheet. Cost: pairs of spans nearer than the web, found by box. */
import { itemAt } from '#geometry/assert.ts';
import { boxesMeet, boxOfSpan, boxOfSpans, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { type Span, spansLength } from '#geometry/span.ts';
import { spanGap } from '#geometry/spans/span-gap.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import { stretchAlong } from '#handoff/stretch-along.ts';
import { slotOutline } from './slot-outline.ts';
import type { Slot, SlotBand } from './template-set.ts';

/** On the inside of a curve a bridge is narrower than along the line: by no more than this leaves of it. */
export const LEAST_SHARE = 2 / 3;

export interface NearSlots {
  /** Numbers of two slots, the lower first. */
  readonly pair: readonly [number, number];
  readonly gap: number;
}

/** At which ends a slot has a bridge to another one. */
export interface Joined {
  readonly start: boolean;
  readonly end: boolean;
}

export interface NearAsk {
  readonly web: number;
  /** mm along the line */
  readonly bridge: number;
  readonly band: SlotBand;
  /** Where the first slot has bridges to the second; undefined where it has none. */
  readonly joined: (a: number, b: number) => Joined | undefined;
}

/**
 * Pairs nearer than the web, in order. Where one bridge stands between two slots they may be as near as its width, and for the
 * length of a web on from there; beyond that the web holds for them too.
 */
export function nearSlots(slots: readonly Slot[], ask: NearAsk): NearSlots[] {
  const { web } = ask;
  const boxes = slots.map(({ outline }) => boxOfSpans(outline.flat()));
  const index = indexBoxes(boxes);
  return boxes.flatMap((box, a) =>
    index.meeting(growBox(box, web)).flatMap((b): NearSlots[] => {
      if (b <= a) return [];
      const [one, other] = [itemAt(slots, a), itemAt(slots, b)];
      const joined = ask.joined(a, b);
      const gap =
        joined === undefined ? gapBetween(one, other, web) : gapPastBridges(one, other, joined, ask);
      return gap < web - ROUNDING ? [{ pair: [a, b], gap }] : [];
    }),
  );
}

function gapBetween(a: Slot, b: Slot, limit: number): number {
  return overlap(a, b) ? 0 : leastGap(a.outline.flat(), b.outline.flat(), limit);
}

/** Whether one holds an end of the other's stretch. */
function overlap(a: Slot, b: Slot): boolean {
  const [ofA, ofB] = [a.spans[0]?.start, b.spans[0]?.start];
  return (
    (ofB !== undefined && isInsideLoops(a.outline, ofB)) ||
    (ofA !== undefined && isInsideLoops(b.outline, ofA))
  );
}

/** The web where nothing is too near. */
function gapPastBridges(a: Slot, b: Slot, joined: Joined, ask: NearAsk): number {
  const across = gapBetween(a, b, ask.bridge * LEAST_SHARE);
  if (across < ask.bridge * LEAST_SHARE - ROUNDING) return Math.min(across, ask.web - 2 * ROUNDING);
  const back = { start: joined.end, end: joined.start };
  return Math.min(gapOfRest(a, joined, b, ask), gapOfRest(b, back, a, ask));
}

/** Of a slot without its ends at bridges, from the other slot. */
function gapOfRest(slot: Slot, { start, end }: Joined, other: Slot, { web, band }: NearAsk): number {
  const length = spansLength(slot.spans);
  const range = { from: start ? web : 0, to: end ? length - web : length };
  if (range.from >= range.to) return web;
  const rest = stretchAlong(slot.spans, range);
  const near = web + 2 * band.reach;
  if (leastGap(rest, other.spans, near) >= near) return web;
  return leastGap(slotOutline(rest, band).flat(), other.outline.flat(), web);
}

/** Exact where it is under the limit. */
function leastGap(as: readonly Span[], bs: readonly Span[], limit: number): number {
  const boxes = bs.map(boxOfSpan);
  let least = limit;
  for (const a of as) {
    const near = growBox(boxOfSpan(a), least);
    bs.forEach((b, index) => {
      if (boxesMeet(near, itemAt(boxes, index))) least = Math.min(least, spanGap(a, b));
    });
  }
  return least;
}

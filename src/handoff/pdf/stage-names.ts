/**
 * Names on the picture of a stage: those of gauge points beside their targets, those of regions in frames inside them, or beside them with a
 * leader where a region is too narrow. None stands on another, nor on a target.
 */
import { type Box, boxesMeet, boxOfSpans, growBox } from '#geometry/box.ts';
import { growingBoxes } from '#geometry/growing-boxes.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { distance, type Point } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import { SAME_SUM } from '#geometry/tolerances.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import type { Placed } from './part-frame.ts';
import type { Pen } from './pen.ts';
import { INK } from './sheet-ink.ts';

export interface StageName {
  readonly text: string;
  readonly box: Box;
  readonly isTurned: boolean;
  /** From the frame into the region, where the name stands beside it. */
  readonly leader?: readonly [from: Point, to: Point];
}

/** mm on paper */
const LETTERS = 2.6;
const POINT_LETTERS = 2.8;
/** Of a target, from its middle to the ends of its cross. */
export const TARGET_REACH = 1.9;
/** Between a name and its frame along the letters and across them; half of what is left between names. */
const PAD = { along: 0.4, across: 1.4 };
const APART = 0.3;
/** Places tried along and across a region, and how far beside it a name may stand. */
const TRIED = 9;
const BESIDE = [3, 6, 9, 12];
const TOP = 0.9;
/** mm: names are about so large. */
const CELL = 8;

const NAME = { size: LETTERS, isBold: true } as const;
const POINT_NAME = { size: POINT_LETTERS, isBold: true } as const;

/** Right of its target, or else left of it, above or below: where it meets no other; right where all meet one. */
export function placePointNames(
  pen: Pen,
  points: readonly { readonly name: string; readonly at: Point }[],
): StageName[] {
  const targets = points.map(({ at }) => boxAround(at, TARGET_REACH, TARGET_REACH));
  const placed: StageName[] = [];
  points.forEach(({ name, at }, own) => {
    const [halfX, halfY] = [pen.textWidth(name, POINT_NAME) / 2 + 0.3, 1.4];
    const [aside, over] = [TARGET_REACH + 0.5 + halfX, TARGET_REACH + 0.3 + halfY];
    const boxes = [
      { x: at.x + aside, y: at.y },
      { x: at.x - aside, y: at.y },
      { x: at.x, y: at.y + over },
      { x: at.x, y: at.y - over },
    ].map((middle) => boxAround(middle, halfX, halfY));
    const taken = [...targets.filter((_, index) => index !== own), ...placed.map(({ box }) => box)];
    const box = boxes.find((each) => taken.every((other) => !boxesMeet(each, other))) ?? boxes[0];
    if (box !== undefined) placed.push({ text: name, box, isTurned: false });
  });
  return placed;
}

/** @param taken boxes that no name may meet */
export function placeRegionNames(
  pen: Pen,
  { regions }: Pick<EtchPlan, 'regions'>,
  ask: { readonly ids: readonly string[]; readonly placed: Placed; readonly taken: readonly Box[] },
): StageName[] {
  const taken = growingBoxes<undefined>(CELL);
  for (const box of ask.taken) taken.add(box, undefined);
  const isFree = (box: Box): boolean => taken.everyMeeting(box, () => false);
  const ids = new Set(ask.ids);
  return regions
    .filter(({ id }) => ids.has(id))
    .flatMap(({ id, label, loops }) => {
      const region = { id, loops: loops.map(ask.placed.loop), at: ask.placed.place(label) };
      const name = within(pen, region, isFree) ?? beside(pen, region, isFree);
      if (name === undefined) return [];
      taken.add(growBox(name.box, APART), undefined);
      return [name];
    });
}

type IsFree = (box: Box) => boolean;

interface NamedRegion {
  readonly id: string;
  readonly loops: readonly Loop[];
  readonly at: Point;
}

/** As near to where it stands best as it can; along the region's longer way where it is too narrow for it. */
function within(pen: Pen, { id, loops, at }: NamedRegion, isFree: IsFree): StageName | undefined {
  const area = boxOfSpans(loops.flat());
  const along = pen.textWidth(id, NAME) / 2 + PAD.along;
  for (const isTurned of [false, true]) {
    const [halfX, halfY] = isTurned ? [PAD.across, along] : [along, PAD.across];
    if (2 * halfX > area.maxX - area.minX + SAME_SUM || 2 * halfY > area.maxY - area.minY + SAME_SUM)
      continue;
    for (const middle of placesIn(area, at)) {
      const box = boxAround(middle, halfX, halfY);
      if (!isFree(box)) continue;
      if (outline(box).every((corner) => isInsideLoops(loops, corner))) return { text: id, box, isTurned };
    }
  }
  return undefined;
}

function beside(pen: Pen, { id, loops, at }: NamedRegion, isFree: IsFree): StageName | undefined {
  const area = boxOfSpans(loops.flat());
  const [halfX, halfY] = [pen.textWidth(id, NAME) / 2 + PAD.along, PAD.across];
  for (const off of BESIDE) {
    const middles = [
      { x: at.x, y: area.maxY + off },
      { x: at.x, y: area.minY - off },
      { x: area.maxX + off + halfX, y: at.y },
      { x: area.minX - off - halfX, y: at.y },
    ];
    for (const middle of middles) {
      const box = boxAround(middle, halfX, halfY);
      if (isFree(box)) return { text: id, box, isTurned: false, leader: [middle, at] };
    }
  }
  return undefined;
}

/** The best place, then those of an even grid over the area, the nearest to it first. */
function* placesIn(area: Box, best: Point): Generator<Point, void> {
  yield best;
  yield* gridIn(area).sort((a, b) => distance(a, best) - distance(b, best));
}

function gridIn({ minX, minY, maxX, maxY }: Box): Point[] {
  const steps = Array.from({ length: TRIED }, (_, step) => (step + 0.5) / TRIED);
  return steps.flatMap((right) =>
    steps.map((up) => ({ x: minX + right * (maxX - minX), y: minY + up * (maxY - minY) })),
  );
}

/** Corners and the middles of the sides: a region with a hole in it has none of them in the hole. */
function outline({ minX, minY, maxX, maxY }: Box): Point[] {
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  return [minX, x, maxX].flatMap((right) => [minY, y, maxY].map((up) => ({ x: right, y: up })));
}

function boxAround({ x, y }: Point, halfX: number, halfY: number): Box {
  return { minX: x - halfX, minY: y - halfY, maxX: x + halfX, maxY: y + halfY };
}

/** On white, so that no hatch strikes it out; what the page is about in a frame. */
export function drawStageName(pen: Pen, { text, box, isTurned, leader }: StageName, isFramed: boolean): void {
  const stroke = { width: 0.25, color: INK };
  if (leader !== undefined) pen.line(leader[0], leader[1], stroke);
  pen.rectangle(box, isFramed ? { fill: '#ffffff', stroke } : { fill: '#ffffff' });
  const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  const style = { ...(isFramed ? NAME : POINT_NAME), align: 'middle' as const };
  if (isTurned) pen.text(text, { x: x + TOP, y }, { ...style, turn: Math.PI / 2 });
  else pen.text(text, { x, y: y - TOP }, style);
}

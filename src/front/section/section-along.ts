/**
 * The section through the front along a straight cut: depth by distance, with the true breakpoints and as many places in
 * between as the fillets need (section-places.ts).
 */

import { makeProbe } from '#front/depth-at.ts';
import { endMinute, momentAt } from '#front/front.ts';
import type { FrontIndex } from '#front/front-index.ts';
import { itemAt } from '#geometry/assert.ts';
import { isInside } from '#geometry/loops/inside-index.ts';
import type { Point } from '#geometry/point.ts';
import { SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import { type SectionLine, type SectionPlace, type SectionReading, sectionPlaces } from './section-places.ts';

export interface SectionAsk {
  readonly minute?: number | undefined;
  /** Evenly spaced places, at least 2; without it places are chosen by tolerance. */
  readonly samples?: number | undefined;
  /** mm by which straight lines between places may leave the front, and what each bath left before; default 0.005. */
  readonly tolerance?: number | undefined;
  /** What was asked at a place; left out, nothing is. */
  readonly targetAt?: ((point: Point) => number | undefined) | undefined;
  /** Distances along the cut where what is asked changes. */
  readonly targetBreaks?: readonly number[] | undefined;
}

export interface SectionPoint {
  /** mm from the start of the cut. */
  readonly distance: number;
  readonly x: number;
  readonly y: number;
  readonly depth: number;
  /** Number of the stage whose front stands here; 0 for untouched. */
  readonly stage: number;
  /** Depth at the end of each stage's bath so far, in the order of the run: the metal between two of them went in the later's bath. */
  readonly bands: readonly number[];
  /** Metal left below, mm. */
  readonly thickness: number;
  /** Depth asked; undefined where nothing is, as off the sheet. */
  readonly target: number | undefined;
  /** Of a part that is etched on both faces: the same of the far one, from its own surface. */
  readonly far?: FarReading;
}

export interface FarReading extends Pick<SectionPoint, 'depth' | 'stage' | 'target' | 'bands'> {
  /** Thickness of the sheet there as it comes, mm. */
  readonly sheet: number;
}

export function sectionAlong(
  index: FrontIndex,
  from: Point,
  to: Point,
  ask: SectionAsk = {},
): SectionPoint[] {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length === 0) return [];
  const placeOf = (distance: number): Point => ({
    x: from.x + (dx / length) * distance,
    y: from.y + (dy / length) * distance,
  });
  const minutes = bandMinutes(index, ask.minute);
  const moments = [...new Set(minutes)];
  const read = makeReader(index, moments, placeOf);
  const isOnSheet = (distance: number): boolean => {
    const { x, y } = placeOf(distance);
    return index.sheet === undefined || isInside(index.sheet, x, y);
  };
  const cut: SectionLine = { from, to, length };
  const places =
    ask.samples === undefined
      ? sectionPlaces({
          index,
          cut,
          moments: moments.map((minute) => momentAt(index.front, minute)),
          read,
          isOnSheet,
          breaks: ask.targetBreaks ?? [],
          tolerance: ask.tolerance ?? SCRIBE_ACCURACY,
        })
      : evenPlaces(cut, Math.max(2, ask.samples), isOnSheet);
  return places.map(({ distance, hasMetal }) => {
    const { depths, stage } = read(distance);
    const depth = hasMetal ? itemAt(depths, moments.length - 1) : 0;
    const spot = placeOf(distance);
    return {
      distance,
      ...spot,
      depth,
      stage: hasMetal ? stage : 0,
      bands: minutes.map((minute) => (hasMetal ? itemAt(depths, moments.indexOf(minute)) : 0)),
      thickness: hasMetal ? Math.max(0, index.front.thickness - depth) : 0,
      target: ask.targetAt?.(spot),
    };
  });
}

/** Reads a front at any place as a section does: at its metal, whether or not the sheet is there. */
export function readAlong(
  index: FrontIndex,
  minute?: number,
): (at: Point) => Pick<SectionPoint, 'depth' | 'stage' | 'bands'> {
  const minutes = bandMinutes(index, minute);
  const probes = minutes.map((each) => makeProbe(index, momentAt(index.front, each)));
  return ({ x, y }) => {
    const bands = probes.map((probe) => probe.measure(x, y));
    return { depth: bands.at(-1) ?? 0, stage: probes.at(-1)?.stage() ?? 0, bands };
  };
}

function evenPlaces(
  { length }: SectionLine,
  count: number,
  isOnSheet: (distance: number) => boolean,
): SectionPlace[] {
  return Array.from({ length: count }, (_, i) => {
    const distance = (length * i) / (count - 1);
    return { distance, hasMetal: isOnSheet(distance) };
  });
}

/** When each stage's bath ended, in the order of the run, or the minute asked for if that is sooner; the last is that minute. */
function bandMinutes({ front }: FrontIndex, minute: number | undefined): number[] {
  const now = minute ?? endMinute(front);
  const ends = [...front.stages]
    .sort((a, b) => a.number - b.number)
    .slice(0, -1)
    .map(({ startMinute, minutes }) => Math.min(now, startMinute + minutes));
  return [...ends, now];
}

type Reader = (distance: number) => SectionReading & { readonly stage: number };

/** The probes along the cut, which keep their readings; the last one says the stage. */
function makeReader(
  index: FrontIndex,
  minutes: readonly number[],
  placeOf: (distance: number) => Point,
): Reader {
  const probes = minutes.map((minute) => makeProbe(index, momentAt(index.front, minute)));
  const readings = new Map<number, ReturnType<Reader>>();
  return (distance) => {
    const known = readings.get(distance);
    if (known !== undefined) return known;
    const { x, y } = placeOf(distance);
    const depths = probes.map((probe) => probe.measure(x, y));
    const features = probes.map((probe) => probe.feature());
    const reading = { depths, features, stage: probes.at(-1)?.stage() ?? 0 };
    readings.set(distance, reading);
    return reading;
  };
}

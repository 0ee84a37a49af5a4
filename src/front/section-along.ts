/**
 * The section through the front along a straight cut: depth by distance, with the true breakpoints and as many places in
 * between as the fillets need. Breakpoints are where the cut crosses an opening's border, where a front comes to the
 * surface or to another stage's floor, and where one front gives way to another; between two of them depth is smooth.
 */

import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { hypot } from '#maths/hypot.ts';
import { makeProbe, type Probe } from './depth-at.ts';
import { endMinute, type Moment, momentAt, reachAt } from './front.ts';
import { type Feature, loopFeatures } from './front-features.ts';
import type { FrontIndex } from './front-index.ts';
import { isInside } from './inside-index.ts';
import { crossingsOf } from './line-crossings.ts';
import { spreadFeature } from './spread.ts';

export interface SectionAsk {
  readonly minute?: number | undefined;
  /** Evenly spaced places, at least 2; without it places are chosen by tolerance. */
  readonly samples?: number | undefined;
  /** mm by which straight lines between places may leave the front; default 0.005. */
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
}

const DEFAULT_TOLERANCE = 0.005;
/** mm along the cut; breakpoints nearer than this are one, and changes are found to this. */
const SHARP = 1e-7;

interface Cut {
  readonly from: Point;
  readonly ux: number;
  readonly uy: number;
  readonly length: number;
}

export function sectionAlong(
  index: FrontIndex,
  from: Point,
  to: Point,
  ask: SectionAsk = {},
): SectionPoint[] {
  const length = hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return [];
  const cut = { from, ux: (to.x - from.x) / length, uy: (to.y - from.y) / length, length };
  const moment = momentAt(index.front, ask.minute);
  const probe = makeProbe(index, moment);
  const gauge = makeGauge(index, cut, probe);
  const distances =
    ask.samples === undefined
      ? chosenDistances(index, cut, moment, gauge, ask)
      : Array.from(
          { length: Math.max(2, ask.samples) },
          (_, i, n = Math.max(2, ask.samples ?? 2)) => (length * i) / (n - 1),
        );
  const earlier = bandMoments(index, ask.minute).map((each) => makeProbe(index, each));
  return distances.map((distance) => {
    const x = from.x + cut.ux * distance;
    const y = from.y + cut.uy * distance;
    const { hasMetal, depth, stage } = gauge(distance);
    return {
      distance,
      x,
      y,
      depth,
      stage,
      bands: [...earlier.map((each) => (hasMetal ? each.measure(x, y) : 0)), depth],
      thickness: hasMetal ? Math.max(0, index.front.thickness - depth) : 0,
      target: ask.targetAt?.({ x, y }),
    };
  });
}

function isOnSheet({ sheet }: FrontIndex, x: number, y: number): boolean {
  return sheet === undefined || isInside(sheet, x, y);
}

interface Reading {
  readonly hasMetal: boolean;
  readonly depth: number;
  readonly stage: number;
  readonly feature: number;
}

type Gauge = (distance: number) => Reading;

/** The probe along the cut, which keeps its readings; off the sheet there is nothing to etch. */
function makeGauge(index: FrontIndex, { from, ux, uy }: Cut, probe: Probe): Gauge {
  const readings = new Map<number, Reading>();
  return (distance) => {
    const known = readings.get(distance);
    if (known !== undefined) return known;
    const x = from.x + ux * distance;
    const y = from.y + uy * distance;
    const reading = isOnSheet(index, x, y)
      ? { hasMetal: true, depth: probe.measure(x, y), stage: probe.stage(), feature: probe.feature() }
      : { hasMetal: false, depth: 0, stage: 0, feature: -1 };
    readings.set(distance, reading);
    return reading;
  };
}

/** The moments at which each stage's bath but the last ended, or the minute asked for if that is sooner. */
function bandMoments({ front }: FrontIndex, minute: number | undefined): Moment[] {
  const now = minute ?? endMinute(front);
  return [...front.stages]
    .sort((a, b) => a.number - b.number)
    .slice(0, -1)
    .map(({ startMinute, minutes }) => momentAt(front, Math.min(now, startMinute + minutes)));
}

/** Breakpoints, and places between them until chords hold the tolerance. */
function chosenDistances(
  index: FrontIndex,
  cut: Cut,
  moment: Moment,
  gauge: Gauge,
  ask: SectionAsk,
): number[] {
  const tolerance = ask.tolerance ?? DEFAULT_TOLERANCE;
  const breaks = breakpoints(index, cut, moment, ask.targetBreaks ?? []);
  const distances: number[] = [itemAt(breaks, 0)];
  for (let i = 0; i + 1 < breaks.length; i++) {
    const low = itemAt(breaks, i);
    const high = itemAt(breaks, i + 1);
    for (const stop of [...changesBetween(gauge, low, high), high]) {
      const start = itemAt(distances, distances.length - 1);
      bend(gauge, { at: start, ...gauge(start) }, { at: stop, ...gauge(stop) }, tolerance, distances);
      distances.push(stop);
    }
  }
  return distances;
}

/** Where the cut crosses borders, and contours at the surface and at every floor: sorted, with both ends. */
function breakpoints(index: FrontIndex, cut: Cut, moment: Moment, more: readonly number[]): number[] {
  const end = { x: cut.from.x + cut.ux * cut.length, y: cut.from.y + cut.uy * cut.length };
  const found = [0, cut.length, ...more.filter((at) => at > 0 && at < cut.length)];
  const depths = [0, ...new Set(moment.floors.filter((depth) => depth > 0))];
  for (const member of featuresAlong(index, cut.from, end)) {
    const feature = itemAt(index.features, member);
    for (const depth of depths) {
      const reach = reachAt(moment, feature.stage, depth);
      if (reach >= 0) found.push(...crossings(feature, reach, cut.from, end));
    }
  }
  for (const feature of loopFeatures(index.front.sheet, -1))
    found.push(...crossings(feature, 0, cut.from, end));
  found.sort((a, b) => a - b);
  return found.filter((at, i) => i === 0 || at - itemAt(found, i - 1) > SHARP);
}

function crossings(feature: Feature, reach: number, from: Point, to: Point): number[] {
  const spread = spreadFeature(feature, reach);
  return spread === undefined ? [] : crossingsOf(spread, from, to);
}

/** Features whose reach comes near the cut: boxes along it, so that a slanting cut does not ask the whole sheet. */
function featuresAlong(index: FrontIndex, from: Point, to: Point): number[] {
  const pieces = Math.min(64, Math.max(1, index.features.length >> 4));
  const found = new Set<number>();
  for (let i = 0; i < pieces; i++) {
    const x0 = from.x + ((to.x - from.x) * i) / pieces;
    const y0 = from.y + ((to.y - from.y) * i) / pieces;
    const x1 = from.x + ((to.x - from.x) * (i + 1)) / pieces;
    const y1 = from.y + ((to.y - from.y) * (i + 1)) / pieces;
    const box = [Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1)] as const;
    for (const member of index.tree?.search(...box) ?? []) found.add(member);
  }
  return [...found].sort((a, b) => a - b);
}

/** Looks for changes this many times within a smooth-looking stretch. */
const LOOKS = 4;

/** Where one source gives way to another between two breakpoints: crests and the valleys' ends, found by halving. */
function changesBetween(gauge: Gauge, low: number, high: number): number[] {
  const changes: number[] = [];
  const inset = Math.min(SHARP, (high - low) / 4);
  // Floors and untouched land end at breakpoints: a stretch with one at both ends and in its middle has no change.
  if ([low + inset, (low + high) / 2, high - inset].every((at) => gauge(at).feature === -1)) return changes;
  let before = low + inset;
  for (let i = 1; i <= LOOKS; i++) {
    const after = low + inset + ((high - low - 2 * inset) * i) / LOOKS;
    const first = gauge(before).feature;
    if (gauge(after).feature !== first) {
      let left = before;
      let right = after;
      while (right - left > SHARP) {
        const middle = (left + right) / 2;
        if (gauge(middle).feature === first) left = middle;
        else right = middle;
      }
      changes.push(right);
    }
    before = after;
  }
  return changes;
}

const DEEPEST_HALVING = 14;

interface At extends Reading {
  readonly at: number;
}

/** Adds places between two until the front's middle lies on the chord: depth across a smooth stretch bends one way. */
function bend(
  gauge: Gauge,
  start: At,
  stop: At,
  tolerance: number,
  into: number[],
  halvings = DEEPEST_HALVING,
): void {
  if (halvings === 0 || stop.at - start.at < SHARP * 4) return;
  const at = (start.at + stop.at) / 2;
  const middle: At = { at, ...gauge(at) };
  if (liesOnChord(start, middle, stop, tolerance)) {
    // A steep stretch next to a flat one can put the middle on the chord by chance: ask a quarter too.
    const quarter = (start.at + at) / 2;
    if (liesOnChord(start, { at: quarter, ...gauge(quarter) }, stop, tolerance)) return;
  }
  bend(gauge, start, middle, tolerance, into, halvings - 1);
  into.push(at);
  bend(gauge, middle, stop, tolerance, into, halvings - 1);
}

function liesOnChord(start: At, point: At, stop: At, tolerance: number): boolean {
  const run = stop.at - start.at;
  const rise = stop.depth - start.depth;
  const off = (point.depth - start.depth) * run - (point.at - start.at) * rise;
  return Math.abs(off) <= tolerance * hypot(run, rise);
}

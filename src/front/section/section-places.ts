/**
 * Where a section along a straight cut needs a row, so that straight lines between rows stay near every curve that is shown: the
 * front, and what each bath left before it. Rows stand where the cut crosses an opening's border, where a front comes to the
 * surface or to a stage's floor, where one front gives way to another, on both sides of an edge of the sheet, and in between
 * wherever a chord could leave a curve by more than the tolerance.
 * Cost: about ten readings a row and curve.
 */

import { offsetFeature } from '#front/contours/offset-curve.ts';
import { type Moment, reachAt } from '#front/front.ts';
import { type Feature, loopFeatures } from '#front/front-features.ts';
import type { FrontIndex } from '#front/front-index.ts';
import { itemAt } from '#geometry/assert.ts';
import { boxOfPoints } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { SAME_CROSSING } from '#geometry/tolerances.ts';
import { chordBound, type QuarterReadings } from './chord-bound.ts';
import { crossingsOf } from './line-crossings.ts';

export interface SectionLine {
  readonly from: Point;
  readonly to: Point;
  /** mm */
  readonly length: number;
}

/** What is read at a distance along the cut: by curve, depth and the feature that it comes from (-1: none). */
export interface SectionReading {
  readonly depths: readonly number[];
  readonly features: readonly number[];
}

export interface SectionPlace {
  /** mm from the start of the cut. */
  readonly distance: number;
  /** Whether the stretch that the place belongs to lies on the sheet; where metal ends two places stand at one distance. */
  readonly hasMetal: boolean;
}

export interface PlacesAsk {
  readonly index: FrontIndex;
  readonly cut: SectionLine;
  /** One a curve. */
  readonly moments: readonly Moment[];
  readonly read: (distance: number) => SectionReading;
  readonly isOnSheet: (distance: number) => boolean;
  /** Distances that get a place in any case. */
  readonly breaks: readonly number[];
  /** mm */
  readonly tolerance: number;
}

const DEEPEST_HALVING = 24;

/** By distance, both ends of the cut among them. */
export function sectionPlaces(ask: PlacesAsk): SectionPlace[] {
  const stops = breakpoints(ask);
  const places: SectionPlace[] = [];
  for (let i = 0; i + 1 < stops.length; i++) {
    const [low, high] = [itemAt(stops, i), itemAt(stops, i + 1)];
    const hasMetal = ask.isOnSheet((low + high) / 2);
    if (places.at(-1)?.hasMetal !== hasMetal) places.push({ distance: low, hasMetal });
    if (hasMetal) {
      const inset = Math.min(SAME_CROSSING, (high - low) / 4);
      const [start, stop] = [endAt(ask, low, low + inset), endAt(ask, high, high - inset)];
      for (const distance of placesBetween(ask, start, stop)) places.push({ distance, hasMetal });
    }
    places.push({ distance: high, hasMetal });
  }
  return places;
}

/** Where the cut crosses borders, and contours at the surface and at every floor, of all curves: sorted, with both ends. */
function breakpoints({ index, cut, moments, breaks }: PlacesAsk): number[] {
  const { from, to, length } = cut;
  const found = [0, length, ...breaks.filter((at) => at > 0 && at < length)];
  const features = featuresAlong(index, cut).map((member) => itemAt(index.features, member));
  for (const moment of moments) {
    const depths = [0, ...new Set(moment.floors.filter((depth) => depth > 0))];
    for (const feature of features) {
      for (const depth of depths) {
        const reach = reachAt(moment, feature.stage, depth);
        if (reach >= 0) for (const each of crossings(feature, reach, cut)) found.push(each);
      }
    }
  }
  for (const feature of loopFeatures(index.front.sheet, -1)) {
    for (const each of crossings(feature, 0, cut)) found.push(each);
    // Through a corner a cut may miss both spans by rounding, and along an edge it crosses none.
    const [dx, dy] = [feature.ax - from.x, feature.ay - from.y];
    const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
    const along = dx * ux + dy * uy;
    if (Math.abs(dx * uy - dy * ux) < SAME_CROSSING && along > 0 && along < length) found.push(along);
  }
  found.sort((a, b) => a - b);
  return found.filter((at, i) => i === 0 || at - itemAt(found, i - 1) > SAME_CROSSING);
}

function crossings(feature: Feature, reach: number, { from, to }: SectionLine): number[] {
  const curve = offsetFeature(feature, reach);
  return curve === undefined ? [] : crossingsOf(curve, from, to);
}

/** Features whose reach comes near the cut: boxes along it, so that a slanting cut does not ask the whole sheet. */
function featuresAlong(index: FrontIndex, { from, to }: SectionLine): number[] {
  const pieces = Math.min(64, Math.max(1, index.features.length >> 4));
  const found = new Set<number>();
  for (let i = 0; i < pieces; i++) {
    const x0 = from.x + ((to.x - from.x) * i) / pieces;
    const y0 = from.y + ((to.y - from.y) * i) / pieces;
    const x1 = from.x + ((to.x - from.x) * (i + 1)) / pieces;
    const y1 = from.y + ((to.y - from.y) * (i + 1)) / pieces;
    const box = boxOfPoints([
      { x: x0, y: y0 },
      { x: x1, y: y1 },
    ]);
    for (const member of index.near.meeting(box)) found.add(member);
  }
  return [...found].sort((a, b) => a - b);
}

interface At extends SectionReading {
  readonly at: number;
}

/** The end of a stretch: its own depths, and the features that lead there. */
function endAt({ read }: PlacesAsk, at: number, inside: number): At {
  return { at, depths: read(at).depths, features: read(inside).features };
}

/** Places between two, so many that no chord can leave a curve by more than the tolerance. */
function placesBetween(ask: PlacesAsk, start: At, stop: At, halvings = DEEPEST_HALVING): number[] {
  const run = stop.at - start.at;
  if (halvings === 0 || run < SAME_CROSSING * 4) return [];
  const [first, middle, last] = [0.25, 0.5, 0.75].map((share) => {
    const at = start.at + run * share;
    return { at, ...ask.read(at) };
  }) as [At, At, At];
  const readings = [start, first, middle, last, stop];
  const divided = (before: At, after: At) => [
    ...placesBetween(ask, start, before, halvings - 1),
    after.at,
    ...placesBetween(ask, after, stop, halvings - 1),
  ];
  const change = kinkOffChord(ask, readings);
  if (change !== undefined) return divided(change.before, change.after);
  const isHeld = start.depths.every((_, curve) => {
    const off = readings.slice(1, 4).map((each) => aboveChord(start, each, stop, curve));
    return chordBound(off as unknown as QuarterReadings) <= ask.tolerance;
  });
  return isHeld ? [] : divided(middle, middle);
}

/** Where one front gives way to another between two readings, and off the chord: crests and the valleys' ends, found by halving. */
function kinkOffChord(ask: PlacesAsk, readings: readonly At[]): { before: At; after: At } | undefined {
  const [start, stop] = [itemAt(readings, 0), itemAt(readings, readings.length - 1)];
  for (let i = 0; i + 1 < readings.length; i++) {
    const [here, next] = [itemAt(readings, i), itemAt(readings, i + 1)];
    for (const [curve, feature] of here.features.entries()) {
      if (itemAt(next.features, curve) === feature) continue;
      let [before, after] = [here, next];
      while (after.at - before.at > SAME_CROSSING) {
        const at = (before.at + after.at) / 2;
        const middle: At = { at, ...ask.read(at) };
        if (itemAt(middle.features, curve) === feature) before = middle;
        else after = middle;
      }
      // Where two fronts run side by side the cut changes between them by rounding alone: that is no kink.
      if (Math.abs(aboveChord(start, after, stop, curve)) > ask.tolerance) return { before, after };
    }
  }
  return undefined;
}

/** mm square to the chord; negative above it, where depth is less. */
function aboveChord(start: At, point: At, stop: At, curve: number): number {
  const run = stop.at - start.at;
  const low = itemAt(start.depths, curve);
  const rise = itemAt(stop.depths, curve) - low;
  const off = (itemAt(point.depths, curve) - low) * run - (point.at - start.at) * rise;
  return off / Math.sqrt(run * run + rise * rise);
}

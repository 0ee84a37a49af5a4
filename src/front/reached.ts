/** What the front makes of each region: its floor, and the deepest and shallowest places in it. */

import { contourArea } from '#front/contours/contour-area.ts';
import { type ClipBorder, type ContourKit, makeClipBorder } from '#front/contours/contour-kit.ts';
import { cutWhereTheyMeet, offsetFeature, pointOfCurve } from '#front/contours/offset-curve.ts';
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans } from '#geometry/box.ts';
import { isInside } from '#geometry/loops/inside-index.ts';
import type { Point } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import { ROUNDING, SAME_COUNT, SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import { SHALLOWEST_WITHIN } from '#units/depth-tolerances.ts';
import { makeProbe, type Probe } from './depth-at.ts';
import { featureGap } from './feature-gap.ts';
import { type Moment, momentAt } from './front.ts';
import type { Feature } from './front-features.ts';

export interface RegionAsk {
  readonly loops: readonly Loop[];
  /** mm² */
  readonly area: number;
  /** Depth etched for, mm; 0 for land. */
  readonly level: number;
  /** Least depth that still counts as the region's floor, mm. Land counts as kept down to SCRIBE_ACCURACY. */
  readonly floorDepth: number;
  /** Greatest depth that still counts as the region's floor, mm; without one all that is deep enough counts. */
  readonly deepestFloor?: number;
}

export interface Reached {
  /** mm²: floor inside tolerance; for land, surface kept. */
  readonly floorArea: number;
  /** Of the region's area. */
  readonly share: number;
  /** mm, over the closed region. Next to a shallower region the shallowest is that region's depth: the wall stands inside. */
  readonly deepest: number;
  readonly shallowest: number;
  /** Where a contour did not close, so that the figures may be wrong; undefined where all did. */
  readonly gap?: Point | undefined;
}

/** At the end of the run. Cost grows with the borders near the region only. */
export function reachedIn(kit: ContourKit, region: RegionAsk): Reached {
  const { front } = kit.index;
  const moment = momentAt(front);
  const clip = makeClipBorder(kit, region.loops);
  const near = membersNear(kit, region.loops);
  const place: Place = { kit, moment, clip, near, loops: region.loops, gaps: [] };
  const deepest = deepestIn(place);
  const floorArea = floorOf(place, region, deepest);
  const shallowest = shallowestIn(place, region.area, deepest);
  const share = region.area > 0 ? floorArea / region.area : 0;
  return { floorArea, share, deepest, shallowest, gap: place.gaps[0] };
}

interface Place {
  readonly kit: ContourKit;
  readonly moment: Moment;
  readonly clip: ClipBorder;
  /** Features whose reach comes into the region's box. */
  readonly near: readonly number[];
  readonly loops: readonly Loop[];
  /** Where contours did not close, as they are found. */
  readonly gaps: Point[];
}

function membersNear({ index }: ContourKit, loops: readonly Loop[]): number[] {
  return index.near.meeting(boxOfSpans(loops.flat()));
}

function floorOf(place: Place, ask: RegionAsk, deepest: number): number {
  const { level, floorDepth, deepestFloor = Number.POSITIVE_INFINITY, area } = ask;
  if (level > 0) {
    if (deepest < floorDepth) return 0;
    // Where the drawn line is the foot of a wall or its middle, walls of deeper neighbours stand in this region.
    const tooDeep = deepest > deepestFloor + ROUNDING ? areaDeeper(place, deepestFloor + ROUNDING) : 0;
    return Math.max(0, areaDeeper(place, floorDepth) - tooDeep);
  }
  return deepest <= SCRIBE_ACCURACY ? area : area - areaDeeper(place, SCRIBE_ACCURACY);
}

/** Area of the region at least so deep. */
function areaDeeper({ kit, moment, clip, near, gaps }: Place, depth: number): number {
  const { area, gap } = contourArea(kit, { members: near, moment, depth, clip });
  if (gap !== undefined) gaps.push(gap);
  return Math.max(0, area);
}

/** Depth is greatest where some opening is nearest: on its floor if it comes into the region, else by the gap between them. */
function deepestIn({ kit, moment, clip, near }: Place): number {
  const { features, openings } = kit.index;
  let deepest = 0;
  openings.forEach((opening, stage) => {
    const floor = itemAt(moment.floors, stage);
    if (floor > deepest && clip.features.some(({ ax, ay }) => isInside(opening, ax, ay))) deepest = floor;
  });
  for (const member of near) {
    const source = itemAt(features, member);
    const floor = itemAt(moment.floors, source.stage);
    if (source.kind === 'corner' || floor <= deepest) continue;
    if (isInside(clip.inside, source.ax, source.ay)) {
      deepest = floor;
      continue;
    }
    const cut = itemAt(moment.cuts, source.stage);
    const factor = itemAt(moment.factors, source.stage);
    for (const border of clip.nearBorders.get(member) ?? []) {
      const across = itemAt(clip.features, border);
      const gap = isCrossed(source, across) ? 0 : featureGap(source, across) / factor;
      const squared = cut * cut - gap * gap;
      if (gap === 0) deepest = Math.max(deepest, floor);
      else if (squared > 0)
        deepest = Math.max(deepest, itemAt(moment.bases, source.stage) + Math.sqrt(squared));
    }
  }
  return deepest;
}

/** An opening's border can pass through a region with no end of either inside the other: `featureGap` does not see that. */
function isCrossed(a: Feature, b: Feature): boolean {
  const [first, second] = [offsetFeature(a, 0), offsetFeature(b, 0)];
  if (first === undefined || second === undefined) return false;
  cutWhereTheyMeet(first, second);
  return first.cuts.length > 0;
}

/** Places tried along each span of the border for its shallowest. */
const TRIED = 9;

/** The shallowest depth: on the border if the whole region is deeper than that, else on a crest inside, found by halving. */
function shallowestIn(place: Place, area: number, deepest: number): number {
  const probe = makeProbe(place.kit.index, place.moment);
  let shallowest = shallowestOnBorder(place, probe, deepest);
  if (shallowest <= SHALLOWEST_WITHIN || isWhollyDeeper(place, area, shallowest - SHALLOWEST_WITHIN))
    return shallowest;
  let low = 0;
  while (shallowest - low > SHALLOWEST_WITHIN) {
    const middle = (low + shallowest) / 2;
    if (isWhollyDeeper(place, area, middle)) low = middle;
    else shallowest = middle;
  }
  return low;
}

function shallowestOnBorder({ clip }: Place, probe: Probe, deepest: number): number {
  let shallowest = deepest;
  for (const feature of clip.features) {
    const curve = offsetFeature(feature, 0);
    if (curve === undefined) continue;
    for (let i = 0; i < TRIED && shallowest > 0; i++) {
      const [x, y] = pointOfCurve(curve, i / (TRIED - 1));
      shallowest = Math.min(shallowest, probe.measure(x, y));
    }
  }
  return shallowest;
}

function isWhollyDeeper(place: Place, area: number, depth: number): boolean {
  return depth <= 0 || areaDeeper(place, depth) >= area * (1 - SAME_COUNT) - ROUNDING;
}

/** The area inside a contour: exact, by Green's theorem over the segments of its border. */

import { type Moment, reachAt } from '#front/front.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { CLOSES } from '#geometry/tolerances.ts';
import { sin } from '#maths/sine.ts';
import { liveSegments, nodesOf } from './chain-segments.ts';
import type { ClipBorder, ContourKit } from './contour-kit.ts';
import { type ContourSegment, contourSegments } from './contour-segments.ts';

export interface ContourAreaAsk {
  readonly members: ArrayLike<number>;
  readonly moment: Moment;
  readonly depth: number;
  readonly clip: ClipBorder | undefined;
}

export interface ContourArea {
  /** mm² */
  readonly area: number;
  /** Where the border does not close, so that the area may be wrong; undefined where it does. */
  readonly gap: Point | undefined;
}

/** Shares of the depth by which another contour is taken where one does not close: fronts that meet in a line do so at one depth. */
const NUDGES = [0, 1e-7, -1e-7, 1e-5, -1e-5] as const;

/** Area at least so deep, of the features given, inside the clip. */
export function contourArea(kit: ContourKit, { members, moment, depth, clip }: ContourAreaAsk): ContourArea {
  let best: ContourArea | undefined;
  for (const nudge of NUDGES) {
    const at = depth * (1 + nudge);
    const reaches = moment.cuts.map((_, stage) => reachAt(moment, stage, at));
    const found = enclosedArea(
      contourSegments(kit, { members, reaches, clip }).filter((segment) => segment.withFloor),
    );
    if (found.gap === undefined) return found;
    best ??= found;
  }
  return best ?? { area: 0, gap: undefined };
}

export interface SweptAreaAsk extends Omit<ContourAreaAsk, 'depth'> {
  /** Others that can cut and hide the members, and count for nothing themselves. */
  readonly beside: ArrayLike<number>;
  /** Stage indices of all of them. */
  readonly stages: readonly number[];
  readonly withoutBorder: boolean;
  /** One and the same for all parts of a border. */
  readonly origin: Point;
}

/** What some features add to the area inside the contour at a depth, as swept from an origin, mm². */
export function sweptArea(
  kit: ContourKit,
  { moment, origin, stages, members, beside, clip, withoutBorder }: SweptAreaAsk,
): (depth: number) => number {
  const reaches: number[] = new Array(moment.cuts.length).fill(-1);
  const ask = { members, beside, clip, withoutBorder, reaches };
  return (depth) => {
    for (const stage of stages) reaches[stage] = reachAt(moment, stage, depth);
    return areaSwept(
      contourSegments(kit, ask).filter((segment) => segment.withFloor),
      origin,
    );
  };
}

function enclosedArea(all: readonly ContourSegment[]): ContourArea {
  if (isClosed(all)) return { area: areaWithin(all), gap: undefined };
  const { live, gap } = liveSegments(
    nodesOf(all),
    all.map((_, i) => i),
  );
  return { area: areaWithin(live.map((segment) => itemAt(all, segment))), gap };
}

/**
 * Whether segments close, without joining them: whatever is summed over the ends of closed ways less their starts comes to
 * nothing. Of x, y, x², y² and xy some do not where a segment is missing, stands alone, or is there twice, nor where two
 * are whose gaps are each other's likeness.
 */
function isClosed(segments: readonly ContourSegment[]): boolean {
  const first = segments[0];
  if (first === undefined) return true;
  const { ax: ox, ay: oy } = first;
  let [x, y, xx, yy, xy, far] = [0, 0, 0, 0, 0, 0];
  for (const segment of segments) {
    const ax = segment.ax - ox;
    const ay = segment.ay - oy;
    const bx = segment.bx - ox;
    const by = segment.by - oy;
    x += bx - ax;
    y += by - ay;
    xx += bx * bx - ax * ax;
    yy += by * by - ay * ay;
    xy += bx * by - ax * ay;
    far = Math.max(far, Math.abs(bx), Math.abs(by));
  }
  const off = Math.max(Math.abs(x), Math.abs(y)) * far + Math.max(Math.abs(xx), Math.abs(yy), Math.abs(xy));
  return off <= CLOSES * far;
}

/** About an origin near the segments, so that it is no less exact far away. mm² */
function areaWithin(segments: readonly ContourSegment[]): number {
  const first = segments[0];
  return first === undefined ? 0 : areaSwept(segments, { x: first.ax, y: first.ay });
}

/** Swept from an origin along segments of a border, mm²: over all segments of a closed border the area inside it, by Green's theorem. */
function areaSwept(segments: readonly ContourSegment[], { x: ox, y: oy }: Point): number {
  let double = 0;
  for (const { curve, from, to, ax, ay, bx, by } of segments) {
    double += (ax - ox) * (by - oy) - (ay - oy) * (bx - ox);
    if (curve.radius === 0) continue;
    const sweep = curve.feature.sweep * (to - from);
    double += curve.radius * curve.radius * (sweep - sin(sweep));
  }
  return double / 2;
}

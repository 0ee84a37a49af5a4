/**
 * A plan's part as it stands in the bath, to be asked about places and minutes. What it takes to answer is made when it is
 * first needed and kept: the caller owns the value for as long as the plan is the one on show.
 */

import { type ContourKit, makeContourKit } from '#front/contours/contour-kit.ts';
import { frontOfPlan } from '#front/front.ts';
import { type FrontIndex, indexFront } from '#front/front-index.ts';
import { type AreaFinder, makeAreaFinder } from '#front/section/area-finder.ts';
import type { Point } from '#geometry/point.ts';
import type { Job } from '#job/job.ts';
import { sheetAt, thickestOf } from '#job/sheet-at.ts';
import { askedAt } from '#plan/asked-at.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';

export interface EtchedPart {
  readonly plan: EtchPlan;
  /** Of the nominal sheet, mm. */
  readonly thickness: Job['stock']['thickness'];
  readonly index: () => FrontIndex;
  readonly kit: () => ContourKit;
  readonly regions: () => AreaFinder;
  /** The other face, where the plan has one. */
  readonly far?: EtchedPart;
}

export function etchedPart(
  plan: EtchPlan,
  thickness: Job['stock']['thickness'],
  measured?: () => ContourKit,
  measuredFar?: () => ContourKit,
): EtchedPart {
  const index = once(() => measured?.().index ?? indexFront(frontOfPlan(plan, thickestOf(thickness))));
  return {
    plan,
    thickness,
    index,
    kit: once(() => measured?.() ?? makeContourKit(index())),
    ...(plan.far === undefined ? {} : { far: etchedPart(plan.far, thickness, measuredFar) }),
    regions: once(() => makeAreaFinder(plan.regions.map(({ loops }) => loops))),
  };
}

/** Depth asked at a place of the region with that number; off the regions there is land for ever, or no metal at all. */
export function depthAskedAt({ plan }: EtchedPart, number: number, at: Point): number | undefined {
  const region = plan.regions[number];
  if (region !== undefined) return askedAt(region, at).depth;
  return plan.sheet.length === 0 ? 0 : undefined;
}

/** Metal left, of the nominal sheet, where the faces are that deep. */
export function thicknessLeft(
  { thickness }: EtchedPart,
  depths: { readonly near: number; readonly far?: number | undefined },
  at: Point,
): number {
  return Math.max(0, sheetAt(thickness, at) - depths.near - (depths.far ?? 0));
}

function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

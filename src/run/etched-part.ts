/**
 * A plan's part as it stands in the bath, to be asked about places and minutes. What it takes to answer is made when it is
 * first needed and kept: the caller owns the value for as long as the plan is the one on show.
 */
import { type AreaFinder, makeAreaFinder } from '#front/area-finder.ts';
import { type ContourKit, makeContourKit } from '#front/contour-kit.ts';
import { frontOfPlan } from '#front/front.ts';
import { type FrontIndex, indexFront } from '#front/front-index.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';

export interface EtchedPart {
  readonly plan: EtchPlan;
  readonly index: () => FrontIndex;
  readonly kit: () => ContourKit;
  readonly regions: () => AreaFinder;
}

/** @param thickness mm; of a tapered sheet the thickest */
export function etchedPart(plan: EtchPlan, thickness: number, measured?: ContourKit): EtchedPart {
  const index = once(() => measured?.index ?? indexFront(frontOfPlan(plan, thickness)));
  return {
    plan,
    index,
    kit: once(() => measured ?? makeContourKit(index())),
    regions: once(() => makeAreaFinder(plan.regions.map(({ loops }) => loops))),
  };
}

/** Depth asked of the region with that number; off the regions there is land for ever, or no metal at all. */
export function askedOf({ plan }: EtchedPart, region: number): number | undefined {
  return plan.regions[region]?.asked.depth ?? (plan.sheet.length === 0 ? 0 : undefined);
}

function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

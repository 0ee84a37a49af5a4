/** What is measured on the front of a finished plan and told in plan.json. */
import type { RegionId } from '#part/part.ts';

/** How far a region's floor came: area in tolerance of its level (mm²), that as a share of the region, and its extreme depths (mm). */
export interface Reached {
  readonly floorArea: number;
  readonly share: number;
  readonly deepest: number;
  readonly shallowest: number;
}

export interface PlanMeasures {
  /** By stage, in the order of the run; mm³. */
  readonly stages: readonly { readonly removedVolume: number }[];
  readonly regions: ReadonlyMap<RegionId, Reached>;
}

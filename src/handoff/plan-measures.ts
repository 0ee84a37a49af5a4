/** What is measured on the front of a finished plan and recorded in plan.json. */
import type { Reached } from '#front/reached.ts';
import type { RegionId } from '#part/part.ts';

export interface PlanMeasures {
  /** By stage, in the order of the run; mm³. */
  readonly stages: readonly { readonly removedVolume: number }[];
  readonly regions: ReadonlyMap<RegionId, Reached>;
}

/** What the checks look at: the plan, its front, how far each region came, and the job's figures. Plain data. */
import type { Finding } from '#findings/finding.ts';
import type { ContourKit } from '#front/contours/contour-kit.ts';
import type { Reached } from '#front/reached.ts';
import type { Loop } from '#geometry/span.ts';
import type { Job } from '#job/job.ts';
import type { RegionId } from '#part/part.ts';
import type { Undercut } from '#plan/allowance.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';
import type { NarrowPlace } from './narrow-places.ts';
import type { LevelAcross, Surroundings } from './surroundings.ts';

export interface Making {
  readonly plan: EtchPlan;
  /** The plan's front, ready to be measured. */
  readonly kit: ContourKit;
  /** By region; every region of the plan stands in it. */
  readonly reached: ReadonlyMap<RegionId, Reached>;
  readonly job: Pick<Job, 'stock' | 'process' | 'rules' | 'levels'>;
}

/** What several checks need to know of a plan's neighbourhoods. */
export interface PlanPlace extends Pick<Making, 'plan' | 'job'> {
  readonly around: Surroundings;
  /** What the allowances of the plan follow from. */
  readonly undercut: Undercut;
  /** Regions that the plan could not open: one finding says so, and the others would only repeat it. */
  readonly unopened: ReadonlySet<RegionId>;
}

/** Where two walls of a region may be too near each other for an opening between them. */
export interface NeckPlace extends NarrowPlace {
  readonly region: PlannedRegion;
  /** Both allowances, mm. */
  readonly limit: number;
}

/** The same of a plan, or of a group of it, with its front. */
export interface MakingPlace extends PlanPlace, Making {
  /** Of the etched regions; land may be without some of its loops. */
  readonly levelAcross: LevelAcross;
  /** Borders of the surface that is left at the end of the run, the metal on their left. Without a sheet it goes on for ever. */
  readonly land: readonly Loop[];
  readonly necks: () => readonly NeckPlace[];
}

/**
 * A rule about places: what it finds in a group of the plan follows from that group alone, and knows stages by their levels; what is
 * reported of all that was found says how many there are and which is worst.
 */
export interface PlaceRule<Found> {
  find(group: MakingPlace): readonly Found[];
  report(found: readonly Found[], whole: WholePlan): readonly Finding[];
}

/** What findings are put into words from. */
export type WholePlan = Pick<Making, 'plan' | 'job' | 'reached'>;

/** The number of the stage that makes a level. */
export function stageNumbers({ plan }: Pick<Making, 'plan'>): (level: number) => number {
  const numbers = new Map(plan.stages.map(({ level, number }) => [level, number]));
  return (level) => numbers.get(level) ?? 0;
}

/** What the checks look at: the plan, its front, how far each region came, and the job's figures. Plain data. */
import type { ContourKit } from '#front/contours/contour-kit.ts';
import type { Reached } from '#front/reached.ts';
import type { Loop } from '#geometry/span.ts';
import type { Job } from '#job/job.ts';
import type { RegionId } from '#part/part.ts';
import type { Undercut } from '#plan/allowance.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import type { Surroundings } from './surroundings.ts';

export interface Making {
  readonly plan: EtchPlan;
  /** The plan's front, ready to be measured. */
  readonly kit: ContourKit;
  /** By region; every region of the plan stands in it. */
  readonly reached: ReadonlyMap<RegionId, Reached>;
  readonly job: Pick<Job, 'stock' | 'process' | 'rules' | 'levels'>;
}

/** The same with what several checks need to know of the neighbourhood. */
export interface MakingPlace extends Making {
  readonly around: Surroundings;
  /** What the allowances of the plan follow from. */
  readonly undercut: Undercut;
  /** Borders of the surface that is left at the end of the run, the metal on their left. Without a sheet it goes on for ever. */
  readonly land: readonly Loop[];
  /** Regions that the plan could not open: one finding says so, and the others would only repeat it. */
  readonly unopened: ReadonlySet<RegionId>;
}

/**
 * A group of a plan with its front and what was measured of it. It follows from the group alone and from what the job says of sheet,
 * process and rules, and is kept as long as those are the same.
 */
import type { MakingGroup } from '#checks/check-making.ts';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { reachedRegions } from '#front/reached-regions.ts';
import { type EndVolumes, endVolumes } from '#front/volumes/volumes-at-ends.ts';
import { areSame } from '#geometry/same-items.ts';
import type { Loop } from '#geometry/span.ts';
import type { Job } from '#job/job.ts';
import { thickestOf } from '#job/sheet-at.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import type { OpenedCluster } from '#plan/opened-cluster.ts';
import type { PlanGroup } from '#plan/plan-groups.ts';

export interface MeasuredGroup extends MakingGroup {
  readonly volumes: EndVolumes;
}

/** By the first cluster of each group: what is kept goes with its clusters. */
export type GroupMemory = WeakMap<OpenedCluster, KeptGroup>;

interface KeptGroup {
  readonly clusters: readonly OpenedCluster[];
  readonly key: string;
  readonly loops: readonly Loop[];
  readonly measured: MeasuredGroup;
}

export function createGroupMemory(): GroupMemory {
  return new WeakMap();
}

type GroupJob = Pick<Job, 'stock' | 'process' | 'rules' | 'levels'>;

/** @param jobKey what the job says, as text */
export function measuredGroup(
  memory: GroupMemory,
  { plan, clusters }: PlanGroup,
  { job, jobKey }: { readonly job: GroupJob; readonly jobKey: string },
): MeasuredGroup {
  const [first] = clusters;
  const key = `${jobKey} ${JSON.stringify(plan.regions.map(({ id, level, asked, taper }) => [id, level, asked, taper]))}`;
  const loops = [...plan.sheet, ...plan.regions.flatMap((region) => region.loops)];
  const kept = first && memory.get(first);
  if (kept?.key === key && areSame(kept.clusters, clusters) && areSame(kept.loops, loops))
    return kept.measured;
  const measured = measure(plan, job);
  if (first !== undefined) memory.set(first, { clusters, key, loops, measured });
  return measured;
}

function measure(plan: EtchPlan, job: GroupJob): MeasuredGroup {
  const kit = makeContourKit(indexFront(frontOfPlan(plan, thickestOf(job.stock.thickness))));
  return { plan, job, kit, volumes: endVolumes(kit), reached: reachedRegions(kit, plan.regions), kept: {} };
}

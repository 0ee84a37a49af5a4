/**
 * A group of a plan with what was measured and found on its front. It follows from the group alone and from what the job says of sheet,
 * process and rules, and is kept as long as those are the same.
 */
import { findInGroup, type GroupFound } from '#checks/check-making.ts';
import type { PlanPlace } from '#checks/making.ts';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import type { Reached } from '#front/reached.ts';
import { reachedRegions } from '#front/reached-regions.ts';
import { type VolumeMeter, volumeMeter } from '#front/volumes/volumes.ts';
import { type EndVolumes, endVolumes } from '#front/volumes/volumes-at-ends.ts';
import { areSame } from '#geometry/same-items.ts';
import type { Loop } from '#geometry/span.ts';
import type { Job } from '#job/job.ts';
import { thickestOf } from '#job/sheet-at.ts';
import type { RegionId } from '#part/part.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import type { OpenedCluster } from '#plan/opened-cluster.ts';
import type { PlanGroup } from '#plan/plan-groups.ts';

export interface MeasuredGroup {
  readonly plan: EtchPlan;
  readonly reached: ReadonlyMap<RegionId, Reached>;
  readonly volumes: EndVolumes;
  readonly found: GroupFound;
  /** Lets go of what is made again when more volumes are asked for: it takes far more memory than the figures. */
  readonly letGo: () => void;
}

/** By the first cluster of each group: what is kept goes with its clusters. */
export type GroupMemory = WeakMap<OpenedCluster, KeptGroup>;

interface KeptGroup {
  readonly clusters: readonly OpenedCluster[];
  readonly jobKey: string;
  readonly askedKey: string;
  readonly loops: readonly Loop[];
  readonly measured: MeasuredGroup;
}

export function createGroupMemory(): GroupMemory {
  return new WeakMap();
}

interface GroupAsk {
  readonly job: Pick<Job, 'stock' | 'process' | 'rules' | 'levels'>;
  /** What the job says, as text. */
  readonly jobKey: string;
  /** Of the plan that the group is of. */
  readonly whole: PlanPlace;
}

export function measuredGroup(
  memory: GroupMemory,
  { plan, clusters }: PlanGroup,
  ask: GroupAsk,
): MeasuredGroup {
  const [first] = clusters;
  const { jobKey } = ask;
  const askedKey = JSON.stringify(
    plan.regions.map(({ id, level, asked, taper }) => [id, level, asked, taper]),
  );
  const loops = [...plan.sheet, ...plan.regions.flatMap((region) => region.loops)];
  const kept = first && memory.get(first);
  const isKept = kept?.jobKey === jobKey && kept.askedKey === askedKey;
  if (isKept && areSame(kept.clusters, clusters) && areSame(kept.loops, loops)) return kept.measured;
  const measured = measure(plan, ask);
  if (first !== undefined) memory.set(first, { clusters, jobKey, askedKey, loops, measured });
  return measured;
}

function measure(plan: EtchPlan, { job, whole }: GroupAsk): MeasuredGroup {
  const makeKit = () => makeContourKit(indexFront(frontOfPlan(plan, thickestOf(job.stock.thickness))));
  const kit = makeKit();
  const reached = reachedRegions(kit, plan.regions);
  let meter: VolumeMeter | undefined = volumeMeter(kit);
  return {
    plan,
    reached,
    volumes: endVolumes(Math.max(0, ...plan.stages.map(({ level }) => level)), () => {
      meter ??= volumeMeter(makeKit());
      return meter;
    }),
    found: findInGroup({ plan, job, kit, reached }, whole),
    letGo: () => {
      meter = undefined;
    },
  };
}

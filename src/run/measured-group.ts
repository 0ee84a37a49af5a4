/**
 * A group of a plan with what was measured and found on its front. It follows from the group alone and from what the job says of sheet,
 * process and rules, and is kept as long as those are the same.
 */
import {
  findInGroup,
  type GroupFound,
  type PackedFound,
  packFound,
  unpackFound,
} from '#checks/check-making.ts';
import type { PlanPlace } from '#checks/making.ts';
import { planPlace } from '#checks/making-place.ts';
import { type ContourKit, makeContourKit } from '#front/contours/contour-kit.ts';
import { frontOfPlan, type StageEnd } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import type { Reached } from '#front/reached.ts';
import { reachedRegions } from '#front/reached-regions.ts';
import { type Removed, volumeMeter } from '#front/volumes/volumes.ts';
import { type EndVolumes, endVolumes, type VolumesFound } from '#front/volumes/volumes-at-ends.ts';
import { itemAt } from '#geometry/assert.ts';
import { areSame } from '#geometry/same-items.ts';
import type { Job } from '#job/job.ts';
import { thickestOf } from '#job/sheet-at.ts';
import type { RegionId } from '#part/part.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';
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
  readonly measured: MeasuredGroup;
}

export function createGroupMemory(): GroupMemory {
  return new WeakMap();
}

export interface GroupAsk {
  readonly job: GroupJob;
  /** What the job says, as text. */
  readonly jobKey: string;
  /** Of the plan that the group is of. */
  readonly whole: PlanPlace;
}

export type GroupJob = Pick<Job, 'stock' | 'process' | 'rules' | 'levels'>;

export function groupAsk(plan: EtchPlan, { stock, process, rules, levels }: GroupJob): GroupAsk {
  const job = { stock, process, rules, levels };
  return { job, jobKey: JSON.stringify(job), whole: planPlace({ plan, job }) };
}

/** Undefined where the memory has no group of just these clusters, requirements and loops. */
export function keptGroup(
  memory: GroupMemory,
  { plan, clusters }: PlanGroup,
  { jobKey }: GroupAsk,
): MeasuredGroup | undefined {
  const [first] = clusters;
  const kept = first && memory.get(first);
  if (kept?.jobKey !== jobKey || !areSame(kept.clusters, clusters)) return undefined;
  return isSameGround(kept.measured.plan, plan) ? kept.measured : undefined;
}

export function keepGroup(
  memory: GroupMemory,
  { clusters }: PlanGroup,
  { jobKey }: GroupAsk,
  measured: MeasuredGroup,
): void {
  const [first] = clusters;
  if (first !== undefined) memory.set(first, { clusters, jobKey, measured });
}

/** Whether the same is asked of the same regions of the same sheet. */
function isSameGround(one: EtchPlan, other: EtchPlan): boolean {
  return (
    areSame(one.sheet, other.sheet) &&
    one.regions.length === other.regions.length &&
    one.regions.every((region, at) => isSameRegion(region, itemAt(other.regions, at)))
  );
}

function isSameRegion(one: PlannedRegion, other: PlannedRegion): boolean {
  return (
    one.id === other.id &&
    one.level === other.level &&
    areSame(one.loops, other.loops) &&
    isSameText(one.asked, other.asked) &&
    isSameText(one.taper, other.taper)
  );
}

function isSameText(one: object | undefined, other: object | undefined): boolean {
  return one === other || textOf(one) === textOf(other);
}

/** What is asked of many regions is mostly one value. */
const texts = new WeakMap<object, string>();

function textOf(value: object | undefined): string {
  if (value === undefined) return '';
  const text = texts.get(value) ?? JSON.stringify(value);
  texts.set(value, text);
  return text;
}

/** What is measured of a group and found on it, as plain data. */
export interface GroupFigures {
  readonly reached: MeasuredGroup['reached'];
  /** In the order of the ends of the whole plan's stages. */
  readonly removed: readonly Removed[];
  readonly found: PackedFound;
}

export function groupFigures(plan: EtchPlan, ask: GroupAsk, ends: readonly StageEnd[]): GroupFigures {
  const { reached, volumes, found } = measureGroup(plan, ask);
  return { reached, removed: volumes.upTo(ends), found: packFound(found) };
}

/** A group whose figures were made elsewhere; its front is made here once more is asked of it. */
export function groupOfFigures(
  plan: EtchPlan,
  { job }: GroupAsk,
  { figures, ends }: { readonly figures: GroupFigures; readonly ends: readonly StageEnd[] },
): MeasuredGroup {
  const { reached, removed, found } = figures;
  const { volumes, letGo } = volumesOf(plan, job, { before: { ends, removed } });
  return { plan, reached, volumes, found: unpackFound(found), letGo };
}

export function measureGroup(plan: EtchPlan, { job, whole }: GroupAsk): MeasuredGroup {
  const kit = kitOf(plan, job);
  const reached = reachedRegions(kit, plan.regions);
  const found = findInGroup({ plan, job, kit, reached }, whole);
  return { plan, reached, found, ...volumesOf(plan, job, { kit }) };
}

function volumesOf(
  plan: EtchPlan,
  job: GroupJob,
  { kit, before }: { readonly kit?: ContourKit; readonly before?: VolumesFound },
): Pick<MeasuredGroup, 'volumes' | 'letGo'> {
  let meter = kit && volumeMeter(kit);
  const deepest = Math.max(0, ...plan.stages.map(({ level }) => level));
  return {
    volumes: endVolumes(
      deepest,
      () => {
        meter ??= volumeMeter(kitOf(plan, job));
        return meter;
      },
      before,
    ),
    letGo: () => {
      meter = undefined;
    },
  };
}

function kitOf(plan: EtchPlan, { stock }: GroupJob): ContourKit {
  return makeContourKit(indexFront(frontOfPlan(plan, thickestOf(stock.thickness))));
}

/**
 * What a plan comes to, measured on its front: metal removed by stage, how far each region's floor came, and what the rules about places
 * find. It is measured group by group; what a group came to is kept with its clusters, so that a change of one depth measures one group again.
 */
import { groupReach } from '#checks/group-reach.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { type ContourKit, makeContourKit } from '#front/contours/contour-kit.ts';
import { frontOfPlan, stageEnds } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import type { Reached } from '#front/reached.ts';
import { meetingVolume } from '#front/volumes/meeting-volume.ts';
import type { Removed } from '#front/volumes/volumes.ts';
import type { PlanMeasures } from '#handoff/plan-measures.ts';
import { thickestOf } from '#job/sheet-at.ts';
import type { RegionId } from '#part/part.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';
import { planGroups } from '#plan/plan-groups.ts';
import {
  createGroupMemory,
  type GroupJob,
  type GroupMemory,
  groupAsk,
  type MeasuredGroup,
  measuredGroup,
} from './measured-group.ts';

/** With what was measured, for whatever else is asked of it. */
export interface MeasuredPlan extends PlanMeasures {
  readonly groups: readonly MeasuredGroup[];
  /** The front of the whole, made when first asked for. */
  readonly kit: () => ContourKit;
  /** The same of the far face, where the plan has one. */
  readonly far?: Pick<MeasuredPlan, 'groups' | 'kit'>;
  /** `contour-not-closed`, of the volumes. */
  readonly findings: readonly Finding[];
}

/** Groups up to which their fronts are held, so that a new level is soon measured in all of them: 30 MB for 800 nested pockets. */
const MOST_HELD = 2000;

export function measurePlan(
  plan: EtchPlan,
  job: GroupJob,
  memory: GroupMemory = createGroupMemory(),
): MeasuredPlan {
  const near = measureFace(plan, job, memory);
  const { far: farPlan } = plan;
  if (farPlan === undefined) return near;
  const far = measureFace(farFaceOf(plan, farPlan), job, memory);
  return {
    kit: near.kit,
    groups: near.groups,
    far: { kit: far.kit, groups: far.groups },
    findings: [...near.findings, ...far.findings],
    stages: bothFaces(plan, [near, far], thickestOf(job.stock.thickness)),
    regions: new Map([...near.regions, ...far.regions]),
  };
}

/** What no point of could be opened is said of both faces at once. */
function farFaceOf(plan: EtchPlan, far: EtchPlan): EtchPlan {
  return { ...far, findings: plan.findings };
}

/** The faces of a plan as they are measured. */
export function measuredFaces(plan: EtchPlan): EtchPlan[] {
  return plan.far === undefined ? [plan] : [plan, farFaceOf(plan, plan.far)];
}

function measureFace(plan: EtchPlan, job: GroupJob, memory: GroupMemory): Omit<MeasuredPlan, 'far'> {
  const thickness = thickestOf(job.stock.thickness);
  const ask = groupAsk(plan, job);
  const ends = stageEnds(plan);
  const planned = planGroups(plan, groupReach(plan, job));
  const removed: (readonly Removed[])[] = [];
  const groups = planned.map((group) => {
    const measured = measuredGroup(memory, group, ask);
    removed.push(measured.volumes.upTo(ends));
    if (planned.length > MOST_HELD) measured.letGo();
    return measured;
  });
  const upTo = ends.map((_, end) => removed.reduce((sum, each) => sum + (each[end]?.volume ?? 0), 0));
  const open = removed.flat().find(({ gap }) => gap !== undefined)?.gap;
  let kit: ContourKit | undefined;
  return {
    groups,
    kit: () => {
      kit ??= makeContourKit(indexFront(frontOfPlan(plan, thickness)));
      return kit;
    },
    findings: open === undefined ? [] : [finding('contour-not-closed', { of: 'volumes' }, { at: open })],
    stages: upTo.map((volume, end) => ({ removedVolume: volume - (upTo[end - 1] ?? 0) })),
    regions: reachedOf(plan, groups),
  };
}

/** By region, in the plan's order; of land that several groups stand in, what all of them leave of it. */
function reachedOf(plan: EtchPlan, groups: readonly MeasuredGroup[]): ReadonlyMap<RegionId, Reached> {
  const found = new Map<RegionId, Reached[]>();
  for (const { reached } of groups) {
    for (const [id, each] of reached) {
      const known = found.get(id);
      if (known === undefined) found.set(id, [each]);
      else known.push(each);
    }
  }
  return new Map(plan.regions.map((region) => [region.id, together(region, found.get(region.id) ?? [])]));
}

function together({ area }: PlannedRegion, parts: readonly Reached[]): Reached {
  const [only] = parts;
  if (only !== undefined && parts.length === 1) return only;
  const floorArea = parts.reduce((left, part) => left - (area - part.floorArea), area);
  return {
    floorArea,
    share: area > 0 ? floorArea / area : 0,
    deepest: parts.reduce((most, { deepest }) => Math.max(most, deepest), 0),
    shallowest: parts.reduce((least, { shallowest }) => Math.min(least, shallowest), only?.shallowest ?? 0),
    gap: parts.find(({ gap }) => gap !== undefined)?.gap,
  };
}

/** Metal between the faces goes once: what both would take in a stage is taken off (M9.5). */
function bothFaces(
  { stages }: EtchPlan,
  [near, far]: readonly [Omit<MeasuredPlan, 'far'>, Omit<MeasuredPlan, 'far'>],
  thickness: number,
): MeasuredPlan['stages'] {
  let before = 0;
  return stages.map(({ startMinute, minutes }, index) => {
    const minute = index === stages.length - 1 ? undefined : startMinute + minutes;
    const met = meetingVolume({ near: near.kit(), far: far.kit(), thickness }, minute);
    const twice = met - before;
    before = met;
    const taken = [near, far].reduce((sum, { stages: own }) => sum + (own[index]?.removedVolume ?? 0), 0);
    return { removedVolume: taken - twice };
  });
}

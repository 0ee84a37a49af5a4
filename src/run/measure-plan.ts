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
import type { Point } from '#geometry/point.ts';
import type { PlanMeasures } from '#handoff/plan-measures.ts';
import { thickestOf } from '#job/sheet-at.ts';
import type { RegionId } from '#part/part.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';
import { type PlanGroups, planGroups } from '#plan/plan-groups.ts';
import {
  type GroupFigures,
  type GroupJob,
  type GroupMemory,
  groupAsk,
  groupOfFigures,
  keepGroup,
  keptGroup,
  type MeasuredGroup,
  measureGroup,
} from './measured-group.ts';

/** With what was measured, for whatever else is asked of it. */
export interface MeasuredPlan extends PlanMeasures {
  readonly groups: readonly Pick<MeasuredGroup, 'found'>[];
  /** The front of the whole, made when first asked for. */
  readonly kit: () => ContourKit;
  /** The same of the far face, where the plan has one. */
  readonly far?: Pick<MeasuredPlan, 'groups' | 'kit'>;
  /** `contour-not-closed`, of the volumes. */
  readonly findings: readonly Finding[];
}

/** Groups up to which their fronts are held, so that a new level is soon measured in all of them: 30 MB for 800 nested pockets. */
const MOST_HELD = 2000;

/** The groups of a face, and what was measured of some of them elsewhere, by their place. */
export interface FaceAhead {
  readonly groups: PlanGroups;
  readonly figures: ReadonlyMap<number, GroupFigures>;
}

/**
 * @param memory of groups; without one nothing is kept of a group but what was found, which takes a third of the room
 * @param ahead of each face, where some of it was measured already
 */
export function measurePlan(
  plan: EtchPlan,
  job: GroupJob,
  memory?: GroupMemory,
  ahead: readonly FaceAhead[] = [],
): MeasuredPlan {
  const near = measureFace(plan, job, { memory, ahead: ahead[0] });
  const { far: farPlan } = plan;
  if (farPlan === undefined) return near;
  const far = measureFace(farFaceOf(plan, farPlan), job, { memory, ahead: ahead[1] });
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

interface Known {
  readonly memory: GroupMemory | undefined;
  readonly ahead: FaceAhead | undefined;
}

function measureFace(plan: EtchPlan, job: GroupJob, { memory, ahead }: Known): Omit<MeasuredPlan, 'far'> {
  const thickness = thickestOf(job.stock.thickness);
  const ask = groupAsk(plan, job);
  const ends = stageEnds(plan);
  const { count, at } = ahead?.groups ?? planGroups(plan, groupReach(plan, job));
  const groups: Pick<MeasuredGroup, 'found'>[] = [];
  const reached = new Map<RegionId, Reached[]>();
  const upTo = ends.map(() => 0);
  let open: Point | undefined;
  for (let place = 0; place < count; place++) {
    const group = at(place);
    const figures = ahead?.figures.get(place);
    const kept = memory && keptGroup(memory, group, ask);
    const measured =
      kept ??
      (figures && groupOfFigures(group.plan, ask, { figures, ends })) ??
      measureGroup(group.plan, ask);
    for (const [end, { volume, gap }] of measured.volumes.upTo(ends).entries()) {
      upTo[end] = (upTo[end] ?? 0) + volume;
      open ??= gap;
    }
    for (const [id, each] of measured.reached) {
      const known = reached.get(id);
      if (known === undefined) reached.set(id, [each]);
      else known.push(each);
    }
    if (memory !== undefined && kept === undefined) keepGroup(memory, group, ask, measured);
    if (count > MOST_HELD) measured.letGo();
    groups.push(memory === undefined ? { found: measured.found } : measured);
  }
  let kit: ContourKit | undefined;
  return {
    groups,
    kit: () => {
      kit ??= makeContourKit(indexFront(frontOfPlan(plan, thickness)));
      return kit;
    },
    findings: open === undefined ? [] : [finding('contour-not-closed', { of: 'volumes' }, { at: open })],
    stages: upTo.map((volume, end) => ({ removedVolume: volume - (upTo[end - 1] ?? 0) })),
    regions: reachedOf(plan, reached),
  };
}

/** By region, in the plan's order; of land that several groups stand in, what all of them leave of it. */
function reachedOf(
  plan: EtchPlan,
  found: ReadonlyMap<RegionId, readonly Reached[]>,
): ReadonlyMap<RegionId, Reached> {
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

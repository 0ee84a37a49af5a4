/** What a plan comes to, measured on its front: metal removed by stage, and how far each region's floor came. */
import { type Finding, finding } from '#findings/finding.ts';
import { type ContourKit, makeContourKit } from '#front/contours/contour-kit.ts';
import { frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { reachedRegions } from '#front/reached-regions.ts';
import { meetingVolume } from '#front/volumes/meeting-volume.ts';
import { stageVolumes } from '#front/volumes/volumes.ts';
import type { PlanMeasures } from '#handoff/plan-measures.ts';
import type { Job } from '#job/job.ts';
import { thickestOf } from '#job/sheet-at.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';

/** With the front that was measured, for whatever else is asked of it. */
export interface MeasuredPlan extends PlanMeasures {
  readonly kit: ContourKit;
  /** Of the far face, where the plan has one. */
  readonly far?: ContourKit;
  /** `contour-not-closed`, of the volumes. */
  readonly findings: readonly Finding[];
}

export function measurePlan(plan: EtchPlan, { stock }: Pick<Job, 'stock'>): MeasuredPlan {
  const thickness = thickestOf(stock.thickness);
  const near = measureFace(plan, thickness);
  const { far: farPlan } = plan;
  if (farPlan === undefined) return near;
  const far = measureFace(farPlan, thickness);
  return {
    kit: near.kit,
    far: far.kit,
    findings: [...near.findings, ...far.findings],
    stages: bothFaces(plan, [near, far], thickness),
    regions: new Map([...near.regions, ...far.regions]),
  };
}

function measureFace(plan: EtchPlan, thickness: number): Omit<MeasuredPlan, 'far'> {
  const kit = makeContourKit(indexFront(frontOfPlan(plan, thickness)));
  const volumes = stageVolumes(kit);
  const open = volumes.find(({ gap }) => gap !== undefined)?.gap;
  return {
    kit,
    findings: open === undefined ? [] : [finding('contour-not-closed', { of: 'volumes' }, { at: open })],
    stages: volumes.map(({ volume }) => ({ removedVolume: volume })),
    regions: reachedRegions(kit, plan.regions),
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
    const met = meetingVolume({ near: near.kit, far: far.kit, thickness }, minute);
    const twice = met - before;
    before = met;
    const taken = [near, far].reduce((sum, { stages: own }) => sum + (own[index]?.removedVolume ?? 0), 0);
    return { removedVolume: taken - twice };
  });
}

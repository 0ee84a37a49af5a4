/**
 * What a plan comes to, measured on its front: metal removed by stage, and how far each region's floor came. Areas are exact;
 * the extreme depths are those of the points probed: along the region's border, at its label, and at the corners of the
 * openings in it. Cost grows with the spans of regions and openings.
 */
import { type ClipBorder, type ContourKit, makeClipBorder, makeContourKit } from '#front/contour-kit.ts';
import { depthsAt } from '#front/depth-at.ts';
import { frontOfPlan, type Moment, momentAt } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { isInside } from '#front/inside-index.ts';
import { contourArea, stageVolumes } from '#front/volumes.ts';
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { pointAlong } from '#geometry/span.ts';
import type { PlanMeasures, Reached } from '#handoff/plan-measures.ts';
import type { Job } from '#part/job.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';

/** mm. A floor is told from the wall beside it by no less; a thousandth of the usual depth tolerance. */
const FLOOR_GRAIN = 5e-5;

/** Shares of a border span at which the depth is probed. */
const PROBED = [0, 0.25, 0.5, 0.75];

export function measurePlan(plan: EtchPlan, job: Pick<Job, 'stock'>): PlanMeasures {
  const { thickness } = job.stock;
  const thickest =
    typeof thickness === 'number' ? thickness : Math.max(thickness.fromValue, thickness.toValue);
  const front = frontOfPlan(plan, thickest);
  const kit = makeContourKit(indexFront(front));
  const moment = momentAt(front);
  return {
    stages: stageVolumes(kit).map(({ volume }) => ({ removedVolume: volume })),
    regions: new Map(plan.regions.map((region) => [region.id, reachOf(region, kit, moment)])),
  };
}

function reachOf(region: PlannedRegion, kit: ContourKit, moment: Moment): Reached {
  const box = boxOfSpans(itemAt(region.loops, 0));
  const members = kit.index.tree?.search(box.minX, box.minY, box.maxX, box.maxY) ?? [];
  const clip = makeClipBorder(kit.index, region.loops);
  const deeperThan = (depth: number): number => contourArea(kit, { members, moment, depth, clip });
  const floorArea = Math.min(region.area, Math.max(0, floorAreaOf(region, deeperThan)));
  const depths = depthsAt(kit.index, probedPoints(region, kit, { members, clip })).depths;
  return {
    floorArea,
    share: floorArea / region.area,
    deepest: depths.reduce((most, depth) => Math.max(most, depth), 0),
    shallowest: depths.reduce((least, depth) => Math.min(least, depth), Number.POSITIVE_INFINITY),
  };
}

/** Area whose depth is within what is asked. Nothing is deeper than asked by construction; of land, what is not etched at all. */
function floorAreaOf({ level, asked, area }: PlannedRegion, deeperThan: (depth: number) => number): number {
  if (level === 0) return area - deeperThan(Math.max(asked.plus, FLOOR_GRAIN));
  return deeperThan(Math.min(asked.depth - asked.minus, level - FLOOR_GRAIN));
}

/** x, y, x, y … */
function probedPoints(
  region: PlannedRegion,
  kit: ContourKit,
  { members, clip }: { readonly members: readonly number[]; readonly clip: ClipBorder },
): Float64Array {
  const points: Point[] = [region.label];
  for (const loop of region.loops) {
    for (const span of loop) for (const share of PROBED) points.push(pointAlong(span, share));
  }
  for (const member of members) {
    const { ax, ay } = itemAt(kit.index.features, member);
    if (isInside(clip.inside, ax, ay)) points.push({ x: ax, y: ay });
  }
  return Float64Array.from(points.flatMap(({ x, y }) => [x, y]));
}

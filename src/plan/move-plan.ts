/** A plan made in a local frame put back into the drawing's own, for the files that leave. */

import type { Point } from '#geometry/point.ts';
import { moveArrangement, moveLoop, movePath, movePoint } from '#geometry/spans/move-spans.ts';
import { moveTaper } from '#job/move-job.ts';
import type { EtchPlan, PlannedRegion } from './etch-plan.ts';

export function movePlan(plan: EtchPlan, by: Point): EtchPlan {
  return {
    ...plan,
    ...(plan.far === undefined ? {} : { far: movePlan(plan.far, by) }),
    arrangement: moveArrangement(plan.arrangement, by),
    sheet: plan.sheet.map((loop) => moveLoop(loop, by)),
    regions: plan.regions.map((region) => moveRegion(region, by)),
    stages: plan.stages.map((stage) => ({
      ...stage,
      piece: stage.piece.map((loop) => moveLoop(loop, by)),
      opening: stage.opening.map((loop) => moveLoop(loop, by)),
      lines: stage.lines.map((path) => movePath(path, by)),
    })),
  };
}

function moveRegion(region: PlannedRegion, by: Point): PlannedRegion {
  const { asked, taper } = region;
  return {
    ...region,
    label: movePoint(region.label, by),
    loops: region.loops.map((loop) => moveLoop(loop, by)),
    asked:
      asked.tapers === undefined
        ? asked
        : { ...asked, tapers: asked.tapers.map((each) => moveTaper(each, by)) },
    ...(taper === undefined
      ? {}
      : { taper: { ...taper, tapers: taper.tapers.map((each) => moveTaper(each, by)) } }),
  };
}

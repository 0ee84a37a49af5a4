/** Steps, pictures and boxes for the tank. */

import { ROUNDING } from '#geometry/tolerances.ts';
import {
  firstOfRegions,
  type InspectionPoint,
  inspectionPoints,
  leastOfRegions,
} from '#handoff/inspection/inspection-points.ts';
import { paperFigures } from '#handoff/paper-figures.ts';
import { gaugePoints } from '#handoff/traveller/gauge-points.ts';
import { traveller } from '#handoff/traveller/traveller.ts';
import { sheetAt } from '#job/sheet-at.ts';
import type { Writer, Writing } from '#run/handoff-files.ts';

/** mm; no region has points so far apart: those that every region has are enough. */
const FARTHEST = 1e6;

export const write: Writer<'traveller'> = async (writing) => {
  const { choices, plan, job, planHash, units, made, side, fonts } = writing;
  const points = leastPoints(writing).filter(({ face }) => face === undefined);
  // During the run a thickness shows what one face lost only where the other is not etched.
  const gauged = points.filter(({ at, depth, thickness }) => {
    const alone = sheetAt(job.stock.thickness, at) - depth.nominal;
    return Math.abs(alone - thickness.nominal) < ROUNDING;
  });
  const bytes = await traveller({
    plan,
    job,
    planHash,
    choices,
    figures: paperFigures(choices.units, units.job === 'in' ? 'in' : 'mm'),
    gauged: gaugePoints(plan, gauged),
    final: firstOfRegions(points),
    side,
    templates: made.templates?.templates.length,
    fonts: await fonts(),
  });
  return [{ name: 'traveller.pdf', what: 'steps, pictures and boxes for the tank', bytes }];
};

/** Of those that are to be inspected, where these are found for the face that the traveller is of. */
function leastPoints({ made, side, plan, kit, far, job, choices }: Writing): readonly InspectionPoint[] {
  if (made.points !== undefined && side !== 'far') return leastOfRegions(made.points);
  const choice = { margin: choices.inspection.margin, spacing: FARTHEST };
  return inspectionPoints({ plan, index: kit().index, far: far?.kit().index, stock: job.stock, choice })
    .points;
}

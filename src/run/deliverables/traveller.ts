/** Steps, pictures and boxes for the tank. */
import { inspectionPoints } from '#handoff/inspection-points.ts';
import { paperFigures } from '#handoff/paper-figures.ts';
import { gaugePoints } from '#handoff/traveller/gauge-points.ts';
import { traveller } from '#handoff/traveller/traveller.ts';
import type { Writer } from '#run/handoff-files.ts';

/** mm; no region has points so far apart: those that every region has are enough. */
const FARTHEST = 1e6;

export const write: Writer<'traveller'> = async ({ choices, plan, job, planHash, kit, units, made }) => {
  const choice = { margin: choices.inspection.margin, spacing: FARTHEST };
  const { points } = inspectionPoints({ plan, index: kit.index, stock: job.stock, choice });
  const isFirst = (region: string, id: string) => points.find((each) => each.region === region)?.id === id;
  const bytes = await traveller({
    plan,
    job,
    planHash,
    choices,
    figures: paperFigures(choices.units, units.job === 'in' ? 'in' : 'mm'),
    gauged: gaugePoints(plan, points),
    final: points.filter(({ region, id }) => isFirst(region, id)),
    templates: made.templates?.templates.length,
  });
  return [{ name: 'traveller.pdf', what: 'steps, pictures and boxes for the tank', bytes }];
};

/** Where drawn edges may come out. */
import { bandDrawing } from '#handoff/band-drawing.ts';
import type { Writer } from '#run/handoff-files.ts';

export const write: Writer<'bands'> = ({ moved, job, units, planFile, planHash }) => {
  const budgets = planFile.lineBudgets ?? [];
  const input = {
    name: job.name,
    plan: moved.plan,
    rules: job.rules,
    budgets,
    unit: units.drawing,
    depthUnit: units.job,
    planHash,
  };
  return [{ name: 'bands.dxf', what: 'where drawn edges may come out', bytes: bandDrawing(input) }];
};

/** Where to gauge and measure, and what must be read there: a form that reads back, and a sheet with balloons. */

import { utf8ToBytes } from '@noble/hashes/utils.js';
import { inspectionCsv } from '#handoff/inspection/inspection-csv.ts';
import { inspectionItems } from '#handoff/inspection/inspection-items.ts';
import { firstOfRegions } from '#handoff/inspection/inspection-points.ts';
import { inspectionSheet } from '#handoff/inspection/inspection-sheet.ts';
import { paperFigures } from '#handoff/paper-figures.ts';
import type { Writer } from '#run/handoff-files.ts';

export const write: Writer<'inspection'> = async (ask) => {
  const { choices, job, moved, units, plan, planHash, planFile, fonts } = ask;
  const lineBudgets = planFile.lineBudgets ?? [];
  const { points } = moved;
  const items = inspectionItems(moved.plan, lineBudgets);
  const text = inspectionCsv({
    points,
    items,
    hasFarFace: plan.far !== undefined,
    planHash,
    units,
    lastStage: plan.stages.length,
  });
  const bytes = await inspectionSheet({
    plan: moved.plan,
    job,
    planHash,
    choices,
    figures: paperFigures(choices.units, units.job === 'in' ? 'in' : 'mm'),
    items,
    fonts: await fonts(),
    floors: firstOfRegions(points).filter(({ stage }) => stage > 0),
  });
  return [
    {
      name: 'inspection-points.csv',
      what: 'where to gauge, and what must be read there',
      bytes: utf8ToBytes(text),
    },
    { name: 'inspection-sheet.pdf', what: 'what the finished part must measure, with balloons', bytes },
  ];
};

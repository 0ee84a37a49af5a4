/** Where to gauge, and what must be read there. */
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { inspectionCsv } from '#handoff/inspection-csv.ts';
import type { Writer } from '#run/handoff-files.ts';

export const write: Writer<'inspection'> = ({ moved, units, plan, planHash }) => {
  const text = inspectionCsv({ points: moved.points, planHash, units, lastStage: plan.stages.length });
  const what = 'where to gauge, and what must be read there';
  return [{ name: 'inspection-points.csv', what, bytes: utf8ToBytes(text) }];
};

/** Machine programs of the scribe lines. */
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { programFiles } from '#handoff/split-program.ts';
import type { Writer } from '#run/handoff-files.ts';

export const write: Writer<'program'> = ({ choices, job, moved, units, findings, planHash }) => {
  if (findings.some((each) => each.code === 'overcut-too-long' && each.facts.of === 'program')) return [];
  const { overrun, program } = choices;
  const input = { name: job.name, planHash, jobUnit: units.job, plan: moved.plan, overrun };
  return programFiles(input, program).map(({ name, text }) => ({
    name,
    what: 'machine program of the scribe lines',
    bytes: utf8ToBytes(text),
  }));
};

import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { correctedBy, NO_READINGS, type RunReadings, takeReading } from '#app/state/run-readings.ts';
import { correctRun } from '#run/correct-run.ts';
import { runJob } from '#run/run-job.ts';

const job = JSON.parse(readFileSync('samples/gauge-pod-cover.job.json', 'utf8'));
const { files, planFile } = await runJob({
  jobText: JSON.stringify(job),
  drawingName: job.drawing,
  drawingBytes: readFileSync(`samples/${job.drawing}`),
});
const planText = new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes);
const sump = planFile?.regions.find(({ level }) => Math.abs(level - 3) < 1e-6)?.id ?? '';
const first = { stage: 1, minutes: 20, region: sump, kind: 'depth' as const, note: 'gauge 3, K.' };

function takeAll(values: readonly number[]): RunReadings {
  return values.reduce((run, value) => takeReading(run, { ...first, value }, planText).run, NO_READINGS);
}

it('at the planned rate the stage needs what the plan said, less what it had', () => {
  // 0.0297 mm/min for 20 min; stage 1 etches 0.8 mm, in 26.94 min.
  const run = takeAll([0.594, 0.595, 0.593]);
  const corrected = correctedBy(run, planText);
  expect(corrected?.stages[0]?.left.value).toBeCloseTo(0.8 / 0.0297 - 20, 1);
  expect(corrected?.stages.map(({ had }) => had)).toEqual([20, 0, 0]);
});

it('comes to what the command line calculates from the readings that are saved, and to the same record', () => {
  const run = takeAll([0.65, 0.66]);
  const command = correctRun({ planText, readingsText: run.readingsText, recordText: undefined });
  expect(correctedBy(run, planText)).toEqual(command.corrected);
  const rows = (text: string | undefined) =>
    JSON.parse(text ?? '{}').entries.flatMap((entry: { rows: unknown[] }) => entry.rows);
  expect(rows(run.recordText)).toEqual(rows(command.recordText));
  expect(rows(run.recordText)[0]).toMatchObject({ note: 'gauge 3; K.' });
});

it('a reading that cannot be is not taken, and what was taken stays as it was', () => {
  const run = takeAll([0.59]);
  const taken = takeReading(run, { ...first, region: 'R99', value: 0.6 }, planText);
  expect(taken.isTaken).toBe(false);
  expect(taken.run).toBe(run);
  expect(taken.findings.map(({ code }) => code)).toEqual(['reading-unclear']);
  expect(taken.corrected).toEqual(correctedBy(run, planText));
});

it('before the first reading nothing is corrected', () => {
  expect(correctedBy(NO_READINGS, planText)).toBeUndefined();
});

/** The samples hold their own tolerances, by root-sum-square, when the run is gauged (M6.3). */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runJob } from '#run/run-job.ts';

/** Jobs of the panel ask a thickness of its bays as closely as its sheet comes: their finding says to measure the sheet. */
const SHEET_TO_MEASURE = /^shutter-bay-grid/;
const SAMPLES = readdirSync('samples').filter(
  (name) => name.endsWith('.job.json') && !SHEET_TO_MEASURE.test(name),
);

test.each(SAMPLES)('%s', { tags: ['long'] }, async (name) => {
  const jobText = readFileSync(`samples/${name}`, 'utf8');
  const { drawing } = JSON.parse(jobText);
  const { planFile } = await runJob({
    jobText,
    drawingName: drawing,
    drawingBytes: readFileSync(`samples/${drawing}`),
  });
  expect(planFile?.budgets?.length).toBeGreaterThan(0);
  for (const { gauged } of planFile?.budgets ?? []) {
    for (const { likely, allowed } of [gauged.tooDeep, gauged.tooShallow]) {
      expect(likely).toBeLessThanOrEqual(allowed);
    }
  }
});

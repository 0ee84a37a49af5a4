/** The two samples that show what a survey gains and how far drawn edges may come out. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runJob } from '#run/run-job.ts';

async function planned(sample: string) {
  const text = readFileSync(`samples/${sample}.job.json`, 'utf8');
  const { drawing } = JSON.parse(text);
  const drawingBytes = new Uint8Array(readFileSync(`samples/${drawing}`));
  const { planFile, findings } = await runJob(
    { jobText: text, drawingName: drawing, drawingBytes },
    { withoutFiles: true },
  );
  if (planFile === undefined) throw new Error('the sample can be planned');
  return { planFile, codes: findings.map(({ code }) => code) };
}

test('the cover planned for sheet 7: not held as one thickness, held as gauged', async () => {
  const { planFile, codes } = await planned('gauge-pod-cover-this-sheet');
  const { model, before, after } = planFile.survey ?? {};
  expect(model).toBe('plane');
  expect(before?.gauged).toBeGreaterThan(1);
  expect(after?.gauged).toBeLessThan(1);
  expect(codes).not.toContain('tolerance-not-held');
  // 1.8 and 2.8 mm are left of a sheet that is thicker on the right: two wells of one drawing come to two levels.
  expect(planFile.stages).toHaveLength(4);
});

test('the panel with its edges held: every line has its tolerance, and none passes it by root-sum-square', async () => {
  const { planFile, codes } = await planned('shutter-bay-grid-edges');
  for (const { byClock } of planFile.lineBudgets ?? []) {
    expect(byClock.outward.allowed).not.toBeNull();
    expect(byClock.outward.likely).toBeLessThanOrEqual(byClock.outward.allowed ?? 0);
    expect(Object.keys(byClock.parts)).toEqual(
      expect.arrayContaining(['factor', 'rate', 'scribing', 'slot', 'laying', 'stretch']),
    );
  }
  expect(codes).toContain('line-barely-held');
  expect(codes).not.toContain('line-doubt');
});

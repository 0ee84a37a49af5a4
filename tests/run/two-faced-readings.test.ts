/** Readings of a run that etches both faces: depths of either, by region; what is left says nothing of one face. */
import { expect, test } from 'vitest';
import { correctRun } from '#run/correct-run.ts';
import { LID, requirements, runLid } from '#support/parts/two-faced-lid.ts';

async function corrected(readings: string) {
  const { files } = await runLid({ requirements }, LID);
  const planText = new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes);
  return correctRun({ planText, readingsText: readings, recordText: undefined });
}

test('a depth on the far face gives the rate as one on the near face does', async () => {
  // Level 1.2 is bare for 16.84 of its minutes in the first stage: 0.5 mm as planned, 0.49 read.
  const rates = await Promise.all(
    ['R02', 'F02'].map(async (region) => {
      const { corrected: found } = await corrected(`stage,region,depth\n1,${region},0.49\n`);
      return found?.stages[0]?.rate?.value;
    }),
  );
  expect(rates[0]).toBeCloseTo(0.0297 * 0.98, 4);
  expect(rates[1]).toBe(rates[0]);
});

test('reading-unclear: a thickness between two floors', async () => {
  const { findings } = await corrected('stage,region,thickness\n1,F02,3.49\n');
  expect(findings.map(({ code }) => code)).toContain('reading-unclear');
});

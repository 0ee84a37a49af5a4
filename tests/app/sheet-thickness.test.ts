/** The thickness that the workbench reads depths against: of the sheet once it is sized, where it is. */
import { expect, test } from 'vitest';
import { runEnd } from '#app/state/run-end.ts';
import { orderedThickness, sheetThickness } from '#app/state/sheet-thickness.ts';
import { plainJobFile } from '#support/jobs/plain-job.ts';
import { plannedCover } from '#support/parts/sized-cover.ts';

const jobWith = (sizing: NonNullable<typeof plainJobFile.process.sizing>, thickness: object | number) => ({
  ...plainJobFile,
  units: 'mm' as const,
  stock: { ...plainJobFile.stock, thickness: thickness as number },
  process: { ...plainJobFile.process, sizing },
});

test('M8.7 an amount goes off both faces or one, a target stands', () => {
  expect(sheetThickness(jobWith({ amount: 0.06 }, 4.1))).toBeCloseTo(3.98, 9);
  expect(sheetThickness(jobWith({ amount: 0.06, faces: 'one' }, 4.1))).toBeCloseTo(4.04, 9);
  expect(sheetThickness(jobWith({ to: 4.03 }, 4.1))).toBeCloseTo(4.03, 9);
  expect(orderedThickness(jobWith({ to: 4.03 }, 4.1))).toBe(4.1);
  // The middle of 4.3 to 3.9 comes to 4.0, its thick end to 4.2.
  const taper = { from: [0, 0], to: [90, 0], thicknessFrom: 4.3, thicknessTo: 3.9 };
  expect(sheetThickness(jobWith({ to: 4 }, taper))).toBeCloseTo(4.2, 9);
});

test('M8.7 the clock runs to the end of the stages, without the sizing', async () => {
  const { planFile } = await plannedCover({ sizing: { amount: 0.06 } });
  const last = planFile?.stages.at(-1);
  expect(planFile && runEnd(planFile)).toBeCloseTo((last?.startMinute ?? 0) + (last?.minutes ?? 0), 5);
  expect(planFile?.totals.minutes).toBeCloseTo((last?.startMinute ?? 0) + (last?.minutes ?? 0) + 2, 5);
});

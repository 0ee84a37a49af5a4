/** What a level leaves: of an even sheet, of one that tapers, and of one that was gauged from end to end. */
import { expect, test } from 'vitest';
import { leftFigure, leftOfSheet } from '#app/state/left-of-sheet.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';
import type { JobFile } from '#job/job-file.ts';
import { buoyLidJob } from '#support/drawings/small-drawing.ts';

type Survey = NonNullable<PlanFile['survey']>;

const lid = buoyLidJob as unknown as JobFile;
/** 3.92 mm at one end, 4.08 at the other. */
const survey = {
  regions: [
    { id: 'R01', thickness: 3.92, doubt: 0.01 },
    { id: 'R03', thickness: 4.08, doubt: 0.01 },
  ],
  readings: [3.91, 3.99, 4.09].map((thickness) => ({ at: [0, 0], thickness, off: 0 })),
} as unknown as Survey;

const figureOf = (sheet: Parameters<typeof leftOfSheet>[0], regions: readonly string[], depth: number) =>
  leftFigure(leftOfSheet(sheet, regions, depth), 'mm');

test('of an even sheet: its thickness less the depth', () => {
  const even = { job: lid, survey: undefined, sized: 0 };
  expect(figureOf(even, ['R01'], 1.2)).toBe('2.80');
  expect(figureOf(even, [], 0)).toBe('4.00');
});

test('of a sheet that tapers: at most', () => {
  const thickness = { thicknessFrom: 4.2, thicknessTo: 3.1, from: [0, 0], to: [200, 0] };
  const job = { ...lid, stock: { ...lid.stock, thickness } } as unknown as JobFile;
  expect(figureOf({ job, survey: undefined, sized: 0 }, ['R01'], 1.2)).toBe('≤3.00');
});

test('of a surveyed sheet: where each region lies, so that 1.92 and 2.08 both leave 2.00', () => {
  const gauged = { job: lid, survey, sized: 0 };
  expect(figureOf(gauged, ['R01'], 1.92)).toBe('≈2.00');
  expect(figureOf(gauged, ['R03'], 2.08)).toBe('≈2.00');
  expect(figureOf(gauged, ['R01', 'R03'], 2)).toBe('1.92–2.08');
  expect(figureOf(gauged, [], 0)).toBe('3.91–4.09');
  expect(figureOf({ ...gauged, sized: 0.11 }, ['R03'], 1.97)).toBe('≈2.00');
});

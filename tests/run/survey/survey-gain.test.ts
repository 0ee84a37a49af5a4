/** What a survey gains (M8.3): levels and shares with this very sheet beside those with one mean thickness, by hand. */
import { describe, expect, test } from 'vitest';
import { runJob } from '#run/run-job.ts';
import { box, dxf } from '#support/drawings/small-drawing.ts';

/** Two bays at the ends of a plate of 400 × 120 mm, and one in its middle. */
const PLATE = dxf({
  insunits: 4,
  entities: [
    box('TRIM', [0, 0], [400, 120]),
    box('ENDS', [15, 20], [25, 100]),
    box('ENDS', [375, 20], [385, 100]),
    box('MIDDLE', [150, 30], [250, 90]),
  ],
});
/** 3.96 mm in the middle of the left bay, 4.12 in that of the right one; 4.04 in the mean. */
const SURVEY = Array.from({ length: 36 }, (_, i) => {
  const [x, y] = [8 + 48 * (i % 9), 6 + 36 * Math.floor(i / 9)];
  return [x, y, 4.04 + (0.08 * (x - 200)) / 180];
});

async function surveyOf(requirements: readonly object[], masking = 'peel-next') {
  const { planFile, findings } = await runJob(
    {
      jobText: JSON.stringify({
        format: 'isobath-job',
        version: 1,
        drawing: 'plate.dxf',
        layers: { outline: ['TRIM'] },
        stock: { alloy: 'al-2024-t3', thickness: 4, survey: SURVEY },
        process: { bath: 'caustic-aluminium', etchFactor: 1, rate: 0.0297, masking },
        requirements,
        levels: 'fewest',
      }),
      drawingName: 'plate.dxf',
      drawingBytes: new TextEncoder().encode(PLATE),
    },
    { withoutFiles: true },
  );
  if (planFile === undefined) throw new Error(JSON.stringify(findings));
  return planFile.survey;
}
const ends = { layer: 'ENDS', thickness: 2, plus: 0.08, minus: 0.08 };

describe.each(['peel-next', 're-mask'])(
  'M8.3 a sheet that slopes by 0.16 mm from bay to bay, %s',
  (masking) => {
    test('both ends at one level of 2.04 as even, at 1.96 and 2.12 as it is; a depth in the middle has no say', async () => {
      const survey = await surveyOf([ends, { layer: 'MIDDLE', depth: 0.9, plus: 0.1, minus: 0.1 }], masking);
      expect(survey?.before?.levels).toEqual([expect.closeTo(2.04, 3)]);
      expect(survey?.after?.levels).toEqual([expect.closeTo(2.12, 2), expect.closeTo(1.96, 2)]);
      // As even either bay is off by all of its tolerance before the run is off at all.
      expect(survey?.before?.gauged).toBeGreaterThan(1);
      expect(survey?.after?.gauged).toBeLessThan(0.5);
      expect(survey?.before?.byClock ?? 0).toBeGreaterThan(survey?.before?.gauged ?? 9);
      expect(survey?.after?.byClock ?? 0).toBeGreaterThan(survey?.after?.gauged ?? 9);
      // Nor is a share that the middle uses counted: alone the ends come to the same.
      expect((await surveyOf([ends], masking))?.after?.gauged).toBeCloseTo(survey?.after?.gauged ?? 9, 1);
    });

    test('two thicknesses as even are two levels, deepest first', async () => {
      const survey = await surveyOf(
        [ends, { layer: 'MIDDLE', thickness: 3.1, plus: 0.1, minus: 0.1 }],
        masking,
      );
      expect(survey?.before?.levels).toEqual([expect.closeTo(2.04, 2), expect.closeTo(0.94, 2)]);
      expect(survey?.after?.levels).toHaveLength(3);
    });
  },
);

test('where no final thickness is asked a survey gains nothing', async () => {
  const survey = await surveyOf([{ layer: 'MIDDLE', depth: 0.9, plus: 0.1, minus: 0.1 }]);
  expect(survey).not.toHaveProperty('before');
  expect(survey).not.toHaveProperty('after');
});

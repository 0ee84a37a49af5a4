import { expect, test } from 'vitest';
import { type BetweenFaces, betweenFaces } from '#run/between-faces.ts';
import { runJob } from '#run/run-job.ts';
import { bytesOf } from '#support/drawings/raw-drawing.ts';
import { box, buoyLidJob, circle, dxf } from '#support/drawings/small-drawing.ts';
import { requirements } from '#support/parts/two-faced-lid.ts';

/** The pocket on the far face lies behind ROUND alone, 5 mm or more from the others. */
const drawing = dxf({
  insunits: 4,
  entities: [
    box('TRIM', [0, 0], [200, 120]),
    box('POCKETS', [20, 20], [90, 100]),
    circle('ROUND', [150, 62], 21),
    box('BACK', [105, 17], [190, 103]),
  ],
});

async function between(job: object): Promise<BetweenFaces | undefined> {
  let found: BetweenFaces | undefined;
  await runJob(
    {
      jobText: JSON.stringify({ ...buoyLidJob, layers: { outline: ['TRIM'], far: ['BACK'] }, ...job }),
      drawingName: 'lid.dxf',
      drawingBytes: bytesOf(drawing),
    },
    {
      onPlan: ({ plan, job }) => {
        found = betweenFaces(plan, job);
      },
    },
  );
  return found;
}

test('M9.6 the least metal is where 0.7 lies over 1.2 of 4 mm, not where the deepest of either face are', async () => {
  expect(await between({ requirements })).toEqual({ least: expect.closeTo(4 - 0.7 - 1.2, 9), cuts: [] });
});

test('a floor with nothing behind it that leaves less than any place that both faces etch', async () => {
  const deeper = requirements.map((each) => (each.layer === 'POCKETS' ? { ...each, depth: 2.3 } : each));
  expect((await between({ requirements: deeper }))?.least).toBeCloseTo(1.7, 9);
});

test('M9.4 what is cut through leaves nothing but a cusp of φ(D − √(D² − T²/4)), at mid-thickness', async () => {
  const found = await between({
    layers: { outline: ['TRIM'], far: ['BACK'], both: ['ROUND'] },
    requirements: [
      { layer: 'POCKETS', depth: 1.3 },
      { layer: 'ROUND', through: 2.2, face: 'both' },
    ],
    process: { ...buoyLidJob.process, etchFactor: 0.9 },
  });
  const cusp = 0.9 * (2.2 - Math.sqrt(2.2 ** 2 - 2 ** 2));
  const cut = (face: string) => ({
    id: expect.stringMatching(`^${face}`),
    cusp: expect.closeTo(cusp, 6),
    depth: 2,
  });
  expect(found).toEqual({ least: expect.closeTo(2.7, 9), cuts: [cut('R'), cut('F')] });
});

test('a part of one face has nothing between', async () => {
  const layers = { outline: ['TRIM'], ignore: ['BACK'] };
  expect(await between({ layers, requirements: requirements.slice(0, 2) })).toBeUndefined();
});

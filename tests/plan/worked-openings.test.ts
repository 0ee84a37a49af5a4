import { expect, test } from 'vitest';
import { spansLength } from '#geometry/span.ts';
import type { Job } from '#job/job.ts';
import { makePlan } from '#plan/make-plan.ts';
import { rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

/** x of the vertical scribe lines half-way up the part, by stage. */
function scribesAt(job: Job, depths: readonly [number, number, number][]): number[] {
  const outlines = [rectangle(0, 0, 8, 100), rectangle(8, 0, 14, 100), rectangle(14, 0, 18, 100)];
  const part = partOf({
    sheet: rectangle(-400, 0, 60, 100),
    outlines: [...outlines, rectangle(-400, 0, 0, 100)],
  });
  const { stages } = makePlan({ part, asked: askedAt(part, depths), job });
  return stages
    .flatMap(({ lines }) => lines.flatMap(({ spans }) => spans))
    .filter(
      ({ kind, start, end }) =>
        kind === 'line' && Math.min(start.y, end.y) < 50 && Math.max(start.y, end.y) > 50,
    )
    .map(({ start }) => start.x)
    .sort((a, b) => a - b);
}

// Worked numbers of the method, computed there with a separate fast-marching first-arrival solver on a 0.02 mm grid.
test.each([
  { factor: 1, expected: [5.9604, 12.0404, 17.0] },
  { factor: 0.8, expected: [6.3683, 12.4323, 17.2] },
  { factor: 1.5, expected: [4.9406, 11.0606, 16.5] },
])('M3.1 levels 3.0 / 2.2 / 1.0 side by side at etch factor $factor', ({ factor, expected }) => {
  const found = scribesAt(plainJob({ etchFactor: [[0, factor]] }), [
    [-10, 50, 3],
    [4, 50, 3],
    [11, 50, 2.2],
    [16, 50, 1],
  ]);
  expect(found).toHaveLength(3);
  for (const [index, x] of found.entries()) expect(x).toBeCloseTo(expected[index] ?? Number.NaN, 4);
});

test('M3.1 a step of only 0.10 mm at 3 mm depth needs an allowance of 0.7681 mm', () => {
  const found = scribesAt(plainJob(), [
    [-10, 50, 3],
    [4, 50, 3],
    [11, 50, 2.9],
    [16, 50, 2.9],
  ]);
  expect(8 - (found[0] ?? 0)).toBeCloseTo(0.7681, 4);
});

test('M3.1 textbook pocket 400 x 200, corner R 15, depth 17: the corner comes out sharp and the opening is 366 x 166', () => {
  // Published manufacturing textbook problem on chemical milling of a 400 x 200 pocket.
  const part = partOf({ outlines: [roundedRectangle(0, 0, 400, 200, 15)] });
  const { stages } = makePlan({ part, asked: askedAt(part, [[200, 100, 17]]), job: plainJob() });
  const [line] = stages[0]?.lines ?? [];
  expect(stages[0]?.minutes).toBeCloseTo(680, 9);
  expect(line?.spans).toHaveLength(4);
  expect(spansLength(line?.spans ?? [])).toBeCloseTo(2 * (366 + 166), 6);
});

test('M3.1 the same pocket at etch factor 1 / 1.75: undercut 9.714, opening 380.57 x 180.57, corner R 5.286', () => {
  const job = plainJob({ etchFactor: [[0, 1 / 1.75]] });
  const part = partOf({ outlines: [roundedRectangle(0, 0, 400, 200, 15)] });
  const { stages } = makePlan({ part, asked: askedAt(part, [[200, 100, 17]]), job });
  const spans = stages[0]?.lines[0]?.spans ?? [];
  expect(spans).toHaveLength(8);
  const radii = spans.flatMap((span) => (span.kind === 'arc' ? [span.radius] : []));
  expect(radii).toHaveLength(4);
  for (const radius of radii) expect(radius).toBeCloseTo(5.286, 3);
  const xs = spans.map(({ start }) => start.x);
  expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(380.57, 2);
});

test.each([
  { factor: 1, expected: [5.1235, 3.1225, 2.5] },
  { factor: 0.678, expected: [3.4737, 2.1171, 1.695] },
])('M3.1 peel-next, etches 2.5 / 1.5 / 2.5, allowances at etch factor $factor', ({ factor, expected }) => {
  // Rule published in a manual (a Pythagoras construction times the etch factor); numbers derived from it.
  const part = partOf({
    outlines: [rectangle(0, 0, 200, 200), rectangle(30, 30, 170, 170), rectangle(60, 60, 140, 140)],
  });
  const asked = askedAt(part, [
    [100, 100, 6.5],
    [45, 100, 4],
    [15, 100, 2.5],
  ]);
  const { stages } = makePlan({ part, asked, job: plainJob({ etchFactor: [[0, factor]] }) });
  const inset = [60, 30, 0].map((drawn, index) => {
    const xs = (stages[index]?.lines ?? []).flatMap(({ spans }) => spans.map(({ start }) => start.x));
    return Math.min(...xs) - drawn;
  });
  expect(stages.map(({ etch }) => etch)).toEqual([2.5, 1.5, 2.5]);
  for (const [index, each] of inset.entries()) expect(each).toBeCloseTo(expected[index] ?? Number.NaN, 4);
});

test('M3.2 what the first opening bares along the sheet edge is not cut there when the rest is peeled', () => {
  // The pocket's rounded corners touch the edge; the opening of the deeper floor between them runs along it.
  const part = partOf({
    sheet: rectangle(0, 0, 80, 80),
    outlines: [roundedRectangle(0, 25, 5, 45, 1.5), rectangle(0, 0, 5, 5)],
  });
  const depths: [number, number, number][] = [
    [2.5, 35, 2.2],
    [40, 40, 1.6],
    [2, 2, 1.6],
  ];
  const job = plainJob({ etchFactor: [[0, 0.5]] });
  const { stages } = makePlan({ part, asked: askedAt(part, depths), job });
  expect(stages.map(({ lines }) => lines.map(({ closed }) => closed))).toEqual([[false], []]);
});

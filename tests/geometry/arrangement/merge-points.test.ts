import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mergePoints } from '#geometry/arrangement/merge-points.ts';

const places = (points: readonly (readonly [number, number])[], tolerance: number) => [
  ...mergePoints(
    points.map(([x, y]) => ({ x, y })),
    tolerance,
  ),
];

test('points within the tolerance are one, by the smallest number; a chain of them is one place', () => {
  const points = [
    [5, 5],
    [0, 0],
    [0.3, 0.4],
    [5.1, 5],
    [0.9, 0.4],
    [0.3, 1.2],
  ] as const;
  // Gaps: 0.5, 0.6, 0.8.
  expect(places(points, 0.5)).toEqual([0, 1, 1, 0, 4, 5]);
  expect(places(points, 0.61)).toEqual([0, 1, 1, 0, 1, 5]);
  expect(places(points, 0.81)).toEqual([0, 1, 1, 0, 1, 1]);
});

test.each([
  [0, 0],
  [-7, 31],
])('two that are near are one however far off the row that they end was begun, from (%d, %d)', (x, y) => {
  for (const begun of [1.5, 1.9, 2.5, 3, 5, 9]) {
    const level = [0, begun, begun + 0.8].map((along) => [x + along, y] as const);
    expect(places(level, 1)).toEqual([0, 1, 1]);
    expect(
      places(
        level.map(([along, across]) => [across, along]),
        1,
      ),
    ).toEqual([0, 1, 1]);
  }
});

test('hundreds at one place are one, and cost no more', () => {
  const many = Array.from({ length: 2000 }, (_, i) => [(i % 7) * 1e-3, (i % 5) * 1e-3] as const);
  expect(new Set(places(many, 0.01))).toEqual(new Set([0]));
});

test('as every pair compared (random, negative places and cell borders too)', () => {
  const at = fc.integer({ min: -40, max: 40 }).map((each) => each / 4);
  fc.assert(
    fc.property(
      fc.array(fc.tuple(at, at), { maxLength: 25 }),
      fc.constantFrom(0.25, 0.5, 0.6, 1.3),
      (points, near) => {
        const expected = points.map((_, i) => i);
        for (let round = 0; round < points.length; round++) {
          for (let i = 0; i < points.length; i++) {
            for (let j = 0; j < points.length; j++) {
              const [[ax, ay], [bx, by]] = [points[i] ?? [0, 0], points[j] ?? [0, 0]];
              if ((ax - bx) ** 2 + (ay - by) ** 2 > near * near) continue;
              expected[i] = Math.min(expected[i] ?? i, expected[j] ?? j);
            }
          }
        }
        expect(places(points, near)).toEqual(expected);
      },
    ),
    { numRuns: 60 },
  );
});

/** Slits of no width in polygons of the grid: areas by the corner formula, which the slit does not change. */
import { describe, expect, test } from 'vitest';
import { closeSlits } from '#geometry/grow/close-slits.ts';
import type { GridPolygon } from '#geometry/grow/grid-polygon.ts';

const polygon = (...corners: readonly (readonly [number, number])[]): GridPolygon =>
  corners.map(([X, Y]) => ({ X, Y }));

/** Signed, in grid units squared (shoelace). */
function areaOf(corners: GridPolygon): number {
  return corners.reduce((sum, { X, Y }, at) => {
    const next = corners[(at + 1) % corners.length] ?? { X, Y };
    return sum + (X * next.Y - next.X * Y) / 2;
  }, 0);
}

const areasOf = (polygons: readonly GridPolygon[]) => polygons.map(areaOf).sort((a, b) => a - b);

test('polygons without a slit are the very same', () => {
  const polygons = [
    polygon([0, 0], [900, 0], [900, 700], [0, 700]),
    polygon([2000, 0], [2600, 0], [2600, 400]),
  ];
  expect(closeSlits(polygons)).toBe(polygons);
});

describe('two areas side by side', () => {
  test('whose common border has a corner on one side only become one', () => {
    const left = polygon([0, 0], [1000, 0], [1000, 600], [0, 600]);
    const right = polygon([1000, 0], [1700, 0], [1700, 600], [1000, 600], [1001, 250]);
    const closed = closeSlits([left, right]);
    expect(closed).toHaveLength(1);
    // What the right one lost to its corner on the border is a triangle of 600 × 1 / 2.
    expect(areasOf(closed)).toEqual([600_000 + 420_000]);
  });

  test('of different heights become one where they lie against each other', () => {
    const left = polygon([0, 0], [1000, 0], [1000, 900], [0, 900]);
    const right = polygon([1000, 200], [1700, 200], [1700, 500], [1000, 500]);
    const closed = closeSlits([left, right]);
    expect(closed).toHaveLength(1);
    expect(areasOf(closed)).toEqual([900_000 + 210_000]);
    const corners = closed[0]?.map(({ X, Y }) => `${X} ${Y}`) ?? [];
    expect(corners).toHaveLength(8);
    expect(new Set(corners)).toEqual(
      new Set(['0 0', '1000 0', '1000 200', '1700 200', '1700 500', '1000 500', '1000 900', '0 900']),
    );
  });

  test('3 units apart stay two', () => {
    const polygons = [
      polygon([0, 0], [1000, 0], [1000, 900], [0, 900]),
      polygon([1003, 200], [1700, 200], [1700, 500], [1003, 500]),
    ];
    expect(closeSlits(polygons)).toBe(polygons);
  });
});

test('a slit of two units that runs into a polygon is taken out', () => {
  const slit = polygon([0, 0], [800, 0], [800, 500], [401, 500], [400, 100], [399, 500], [0, 500]);
  const closed = closeSlits([slit]);
  // The corner (399, 500) lies on no edge of the other side: nothing may be lost but the slit itself.
  expect(Math.abs(areasOf(closed).reduce((sum, each) => sum + each, 0) - 400_000)).toBeLessThanOrEqual(400);
});

test('a spike that runs out and back over itself is taken out', () => {
  const spiked = polygon(
    [0, 0],
    [700, 0],
    [700, 300],
    [1500, 300],
    [1100, 300],
    [700, 300],
    [700, 400],
    [0, 400],
  );
  expect(areasOf(closeSlits([spiked]))).toEqual([280_000]);
  expect(closeSlits([spiked]).flat()).not.toContainEqual({ X: 1500, Y: 300 });
});

test('several corners on one edge are put on it in its own order', () => {
  const low = polygon([0, 0], [3000, 0], [3000, 500], [0, 500]);
  const teeth = [
    polygon([2200, 500], [2600, 500], [2600, 800], [2200, 800]),
    polygon([300, 500], [900, 500], [900, 700], [300, 700]),
  ];
  const closed = closeSlits([low, ...teeth]);
  expect(areasOf(closed)).toEqual([1_500_000 + 120_000 + 120_000]);
  expect(closed[0]).toHaveLength(12);
});

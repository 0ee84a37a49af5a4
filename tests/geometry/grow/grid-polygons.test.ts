/** Polygons on the grid of 10 000 to the mm. */

import { describe, expect, test } from 'vitest';
import type { GridPolygon } from '#geometry/grow/grid-polygon.ts';
import {
  chordsPerTurn,
  combinePolygons,
  gridOrigin,
  gridPolygonOf,
  pointOf,
  positivelyWound,
} from '#geometry/grow/grid-polygons.ts';
import { arcSpan, lineSpan, reverseSpan, reverseSpans } from '#geometry/span.ts';
import { rectangle } from '#support/geometry/shapes.ts';

const ORIGIN = { x: 0, y: 0 };
const grid = (x0: number, y0: number, x1: number, y1: number) =>
  gridPolygonOf(rectangle(x0, y0, x1, y1), ORIGIN);

/** mm², by the shoelace formula. */
function areaOf(corners: GridPolygon): number {
  return corners.reduce((sum, { X, Y }, at) => {
    const next = corners[(at + 1) % corners.length] ?? { X, Y };
    return sum + (X * next.Y - next.X * Y) / 2e8;
  }, 0);
}
const areasOf = (polygons: readonly GridPolygon[]) => polygons.map(areaOf).sort((a, b) => a - b);

test('the origin is a whole millimetre near the middle', () => {
  expect(gridOrigin(rectangle(1.2, -7, 8.9, 20))).toEqual({ x: 5, y: 7 });
  expect(gridOrigin([])).toEqual(ORIGIN);
});

test('corners are rounded to the grid about the origin, and come back', () => {
  const origin = { x: 100, y: -40 };
  const [first, second] = gridPolygonOf(
    [lineSpan({ x: 101.234_56, y: -41 }, { x: 99, y: -39.000_04 })],
    origin,
  );
  expect(first).toEqual({ X: 12_346, Y: -10_000 });
  expect(second).toBeUndefined();
  expect(pointOf({ X: 12_346, Y: -10_000 }, origin)).toEqual({ x: expect.closeTo(101.2346, 12), y: -41 });
});

describe('chords of an arc', () => {
  test('are as few as keep within 0.002 mm, a multiple of four, at least eight', () => {
    for (const radius of [0.5, 3, 17, 240, 3100]) {
      const count = chordsPerTurn(radius);
      const sagitta = (chords: number) => radius * (1 - Math.cos(Math.PI / chords));
      expect(count % 4).toBe(0);
      expect(sagitta(count)).toBeLessThanOrEqual(0.002);
      expect(sagitta(count - 4)).toBeGreaterThan(0.002);
    }
    expect(chordsPerTurn(0.001)).toBe(8);
  });

  test('end at the same angles whichever way and how far the arc runs', () => {
    const arc = (from: number, sweep: number) => arcSpan({ center: { x: 3, y: 1 }, radius: 20, from, sweep });
    const keys = (polygon: GridPolygon) => polygon.slice(1).map(({ X, Y }) => `${X} ${Y}`);
    const whole = keys(gridPolygonOf([arc(0.1, 2.5)], ORIGIN));
    expect(keys(gridPolygonOf([reverseSpan(arc(0.1, 2.5))], ORIGIN))).toEqual([...whole].reverse());
    const part = keys(gridPolygonOf([arc(0.6, 1.1)], ORIGIN));
    expect(part.length).toBeGreaterThan(10);
    expect(whole).toEqual(expect.arrayContaining(part));
    // An arc of 2.5 rad has that share of the chords, less what is left out beside its ends.
    expect(Math.abs(whole.length - (2.5 / (2 * Math.PI)) * chordsPerTurn(20))).toBeLessThan(1.3);
  });
});

describe('areas of polygons', () => {
  const [a, b] = [grid(0, 0, 6, 4), grid(5, 1, 9, 3)];

  test('united, subtracted and intersected', () => {
    expect(areasOf(combinePolygons('unite', [a], [b]))).toEqual([24 + 8 - 2]);
    expect(areasOf(combinePolygons('subtract', [a], [b]))).toEqual([22]);
    expect(areasOf(combinePolygons('subtract', [b], [a]))).toEqual([6]);
    expect(areasOf(combinePolygons('intersect', [a], [b]))).toEqual([2]);
  });

  test('read by the non-zero rule: a polygon inside one that runs alike adds nothing', () => {
    expect(areasOf(combinePolygons('unite', [grid(0, 0, 6, 4), grid(1, 1, 2, 3)], []))).toEqual([24]);
  });

  test('a clockwise polygon takes one turn away', () => {
    const hole = gridPolygonOf(reverseSpans(rectangle(1, 1, 3, 2)), ORIGIN);
    expect(areasOf(positivelyWound([a, hole]))).toEqual([-2, 24]);
    expect(positivelyWound([hole])).toEqual([]);
    expect(areasOf(positivelyWound([a, a, hole]))).toEqual([24]);
  });
});

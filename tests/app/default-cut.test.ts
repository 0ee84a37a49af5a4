/** The first section of a part shows as much of it as one straight cut can. */
import { expect, test } from 'vitest';
import { defaultCut } from '#app/state/default-cut.ts';
import type { RegionShape } from '#app/state/region-shape.ts';
import type { ShownPlan } from '#job/formats/plan-file.ts';

interface Placed {
  readonly level: number;
  readonly x: readonly [from: number, to: number];
  readonly y: readonly [from: number, to: number];
}

function cutOf(...placed: readonly Placed[]) {
  const regions = placed.map(({ level, x, y }, index) => ({
    id: `R${index}`,
    level,
    label: [(x[0] + x[1]) / 2, (y[0] + y[1]) / 2],
  }));
  const shapes = placed.map(({ x, y }, index) => ({
    region: regions[index],
    box: { minX: x[0], maxX: x[1], minY: y[0], maxY: y[1] },
  }));
  return defaultCut({ regions } as unknown as ShownPlan, shapes as unknown as RegionShape[]);
}

const HOLE = { level: 0, x: [1, 3], y: [44, 46] } as const;

test('through the bays, not through a hole, while nothing is etched yet', () => {
  const cut = cutOf(HOLE, { level: 0, x: [5, 40], y: [4, 20] }, { level: 0, x: [50, 99], y: [8, 18] });
  expect(cut?.from.y).toBe(12);
  // 3 % of 98 mm stand out at both sides.
  expect(cut?.from.x).toBeCloseTo(1 - 2.94, 9);
  expect(cut?.to.x).toBeCloseTo(99 + 2.94, 9);
});

test('through the deepest floor, and of two as deep through the one that has more beside it', () => {
  const deep = [
    { level: 2.4, x: [10, 20], y: [30, 36] },
    { level: 2.4, x: [60, 70], y: [4, 14] },
  ] as const;
  expect(cutOf(HOLE, ...deep, { level: 1.1, x: [80, 95], y: [2, 11] })?.from.y).toBe(9);
  expect(cutOf(HOLE, ...deep, { level: 1.1, x: [40, 95], y: [31, 39] })?.from.y).toBe(33);
});

test('none without a region', () => {
  expect(cutOf()).toBeUndefined();
});

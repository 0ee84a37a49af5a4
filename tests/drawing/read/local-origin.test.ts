/** Where linework that lies far out gets its own origin: whole metres, in the middle of most of it. */
import { expect, test } from 'vitest';
import { localOrigin } from '#drawing/read/local-origin.ts';
import type { Box } from '#geometry/box.ts';

const box = (x: number, y: number, width = 400, height = 300): Box => ({
  minX: x,
  minY: y,
  maxX: x + width,
  maxY: y + height,
});

test('none where nothing lies far out, or only what is itself larger than a drawing may be', () => {
  expect(localOrigin([box(10, 20)], [])).toBeUndefined();
  expect(localOrigin([box(10, 20)], [box(0, 0, 1.1e6, 10)])).toBeUndefined();
  expect(localOrigin([box(10, 20)], [box(0, 0, 10, 1.1e6)])).toBeUndefined();
});

test('the middle of the linework to a whole metre, each coordinate by itself', () => {
  expect(localOrigin([], [box(3_500_400, -5_702_600)])).toEqual({ x: 3_501_000, y: -5_702_000 });
  expect(localOrigin([], [box(3_500_200, 12)])).toEqual({ x: 3_500_000, y: 0 });
  expect(localOrigin([], [box(12, -5_702_600)])).toEqual({ x: 0, y: -5_702_000 });
});

test('of several the median: a few strays do not move it, what is too large does not count', () => {
  const far = [box(3_500_200, 7_000_100), box(3_502_300, 7_002_000), box(3_509_900, 7_000_900)];
  expect(localOrigin([box(0, 0)], [...far, box(0, 0, 1.1e6, 10)])).toEqual({ x: 3_503_000, y: 7_001_000 });
});

test('none where most of it lies near the origin of the drawing, or where no place could be told apart', () => {
  expect(localOrigin([box(0, 0), box(5, 5), box(9, 1)], [box(3_500_200, 7_000_100)])).toBeUndefined();
  expect(localOrigin([], [box(1e16, 0)])).toBeUndefined();
  expect(localOrigin([], [box(0, -1e16)])).toBeUndefined();
});

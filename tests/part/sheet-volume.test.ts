import { expect, test } from 'vitest';
import type { Taper } from '#job/taper.ts';
import { sheetVolume } from '#part/sheet-volume.ts';
import { circle, rectangle } from '#support/geometry/shapes.ts';

const taper = (from: number, to: number): Taper => ({
  from: { x: from, y: 0 },
  to: { x: to, y: 0 },
  fromValue: 4,
  toValue: 2,
});

test('a wedge of 4 to 2 mm over 1000 mm is 3 mm thick on average', () => {
  expect(sheetVolume([rectangle(0, 0, 1000, 100)], taper(0, 1000))).toBeCloseTo(300_000, 6);
});

test('held beyond its ends: 200 mm of 4, 400 mm of 3 on average, 400 mm of 2', () => {
  expect(sheetVolume([rectangle(0, 0, 1000, 100)], taper(200, 600))).toBeCloseTo(
    100 * (200 * 4 + 400 * 3 + 400 * 2),
    6,
  );
});

test('a disc is as thick as at its centre; a flat sheet is area × thickness; without a border nobody knows', () => {
  expect(sheetVolume([circle(500, 20, 80)], taper(0, 1000))).toBeCloseTo(3 * Math.PI * 6400, 6);
  expect(sheetVolume([rectangle(0, 0, 10, 10)], 3.2)).toBe(320);
  expect(sheetVolume([], taper(0, 1000))).toBeUndefined();
});

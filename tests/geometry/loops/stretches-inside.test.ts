import { describe, expect, test } from 'vitest';
import { stretchesInside } from '#geometry/loops/stretches-inside.ts';
import { reverseSpans } from '#geometry/span.ts';
import { circle, polygon, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';

const near = (from: number, to: number) => ({ from: expect.closeTo(from, 12), to: expect.closeTo(to, 12) });

describe('a level line', () => {
  test('3 above the middle of a circle of 5 is inside over 2 · 4', () => {
    expect(stretchesInside(circle(7, 1, 5), 4)).toEqual([near(3, 11)]);
    expect(stretchesInside(circle(7, 1, 5), -2)).toEqual([near(3, 11)]);
    expect(stretchesInside(circle(7, 1, 5), 1)).toEqual([near(2, 12)]);
    expect(stretchesInside(circle(7, 1, 5), 6.01)).toEqual([]);
    expect(stretchesInside(reverseSpans(circle(7, 1, 5)), 4)).toEqual([near(3, 11)]);
  });

  test('is inside a plate but for its hole', () => {
    const plate = [...rectangle(-3, 0, 20, 9), ...reverseSpans(circle(8, 4, 3))];
    expect(stretchesInside(plate, 4)).toEqual([near(-3, 5), near(11, 20)]);
    expect(stretchesInside(plate, 7.5)).toEqual([near(-3, 20)]);
  });

  test('through a rounded corner of 5 is inside from where the arc is', () => {
    // 4 above the corner's centre: 3 to the right of it.
    expect(stretchesInside(roundedRectangle(0, 0, 30, 20, 5), 19)).toEqual([near(2, 28)]);
    expect(stretchesInside(roundedRectangle(0, 0, 30, 20, 5), 1)).toEqual([near(2, 28)]);
  });

  test('through corners counts each once', () => {
    const saw = polygon([
      [0, 0],
      [12, 0],
      [12, 4],
      [9, 2],
      [5, 4],
      [0, 2],
    ]);
    // At 2 it passes the corner (9, 2) and begins at (0, 2); just there the upper side has no width.
    const total = (y: number) => stretchesInside(saw, y).reduce((sum, { from, to }) => sum + to - from, 0);
    expect(total(1)).toBe(12);
    expect(total(2)).toBeCloseTo(12, 12);
    expect(total(3)).toBeCloseTo(4.5 + 1.5, 12);
  });
});

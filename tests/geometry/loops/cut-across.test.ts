import { describe, expect, test } from 'vitest';
import { cutFrame, extentAlong } from '#geometry/loops/cut-across.ts';
import { reverseSpans } from '#geometry/span.ts';
import { circle, polygon, rectangle } from '#support/geometry/shapes.ts';

const near = (x: number, y: number) => ({ x: expect.closeTo(x, 12), y: expect.closeTo(y, 12) });

test('a plate from (1, 2) to (8, 12) extends 10 up, 7 to the right, and by both along (0.6, 0.8)', () => {
  const plate = [rectangle(1, 2, 8, 12)];
  expect(extentAlong(plate, { x: 0, y: 1 })).toEqual({ from: 2, to: 12 });
  expect(extentAlong(plate, { x: 1, y: 0 })).toEqual({ from: 1, to: 8 });
  const { from, to } = extentAlong(plate, { x: 0.6, y: 0.8 });
  expect(from).toBeCloseTo(0.6 + 1.6, 12);
  expect(to).toBeCloseTo(4.8 + 9.6, 12);
  const back = extentAlong(plate, { x: -0.6, y: 0.8 });
  expect(back.from).toBeCloseTo(-4.8 + 1.6, 12);
  expect(back.to).toBeCloseTo(-0.6 + 9.6, 12);
});

test('a disc extends by its radius whichever way', () => {
  expect(extentAlong([circle(3, -5, 2)], { x: 0.8, y: -0.6 })).toEqual({
    from: expect.closeTo(2.4 + 3 - 2, 12),
    to: expect.closeTo(2.4 + 3 + 2, 12),
  });
});

describe('cuts', () => {
  test('of a plate with a hole are two, from left to right of the way', () => {
    const { cutsAt } = cutFrame([rectangle(0, 0, 20, 9), reverseSpans(circle(8, 4, 3))], { x: 0, y: 1 });
    expect(cutsAt(4)).toMatchObject([
      { start: near(0, 4), end: near(5, 4) },
      { start: near(11, 4), end: near(20, 4) },
    ]);
    expect(cutsAt(8)).toMatchObject([{ start: near(0, 8), end: near(20, 8) }]);
    expect(cutsAt(9.5)).toEqual([]);
  });

  test('square to (0.6, 0.8) lie at their distance from the origin', () => {
    // The triangle's sides run along (0.6, 0.8) and (0.8, −0.6): cut 5 along, it is as wide as what is left.
    const triangle = polygon([
      [0, 0],
      [0.8 * 10, -0.6 * 10],
      [0.6 * 10, 0.8 * 10],
    ]);
    const frame = cutFrame([triangle], { x: 0.6, y: 0.8 });
    expect([frame.from, frame.to]).toEqual([expect.closeTo(0, 12), expect.closeTo(10, 12)]);
    expect(frame.cutsAt(4)).toMatchObject([{ start: near(2.4, 3.2), end: near(2.4 + 4.8, 3.2 - 3.6) }]);
  });
});

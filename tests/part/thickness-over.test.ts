/** The sheet's thickness over a region: a taper's value at the places that lie farthest along it, by hand. */
import { describe, expect, test } from 'vitest';
import { thicknessOver } from '#part/thickness-over.ts';
import { circle, rectangle } from '#support/geometry/shapes.ts';

const near = (least: number, most: number) => ({
  least: expect.closeTo(least, 12),
  most: expect.closeTo(most, 12),
});

test('an even sheet is as thick everywhere', () => {
  expect(thicknessOver(4.06, [rectangle(0, 0, 3, 2)])).toEqual({ least: 4.06, most: 4.06 });
});

describe('a sheet that tapers from 5.0 mm at x = 40 to 3.4 mm at x = 240', () => {
  const taper = { from: { x: 40, y: 7 }, to: { x: 240, y: 7 }, fromValue: 5, toValue: 3.4 };

  test('over a pocket from 65 to 90: 4.8 to 4.6', () => {
    expect(thicknessOver(taper, [rectangle(65, -300, 90, 20)])).toEqual(near(4.6, 4.8));
  });

  test('is held beyond its ends', () => {
    expect(thicknessOver(taper, [rectangle(0, 0, 50, 20)])).toEqual(near(4.92, 5));
    expect(thicknessOver(taper, [rectangle(200, 0, 300, 20)])).toEqual(near(3.4, 3.72));
  });

  test('over several pockets is that of all of them', () => {
    expect(thicknessOver(taper, [rectangle(65, 0, 90, 20), circle(120, 50, 5)])).toEqual(near(4.32, 4.8));
  });
});

test('along (0.6, 0.8) from (10, 20), 50 long: a disc spans its diameter', () => {
  // The disc's centre lies 25 along; 4 to either side. 0.02 mm for each mm.
  const taper = { from: { x: 10, y: 20 }, to: { x: 40, y: 60 }, fromValue: 2, toValue: 3 };
  expect(thicknessOver(taper, [circle(25, 40, 4)])).toEqual(near(2.42, 2.58));
});

test('a taper without length holds its first value', () => {
  const point = { x: 3, y: 4 };
  const taper = { from: point, to: point, fromValue: 2.5, toValue: 9 };
  expect(thicknessOver(taper, [rectangle(0, 0, 9, 9)])).toEqual({ least: 2.5, most: 2.5 });
});

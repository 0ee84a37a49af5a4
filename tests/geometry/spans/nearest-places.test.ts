import { expect, test } from 'vitest';
import { nearestPlaces } from '#geometry/spans/nearest-places.ts';
import { circle, rectangle } from '#support/geometry/shapes.ts';

test('between two circles on the line through both centres', () => {
  const found = nearestPlaces(circle(0, 0, 2), circle(6, 8, 3), 9);
  expect(found?.gap).toBeCloseTo(5, 12);
  expect(found?.from).toEqual({ x: expect.closeTo(1.2, 9), y: expect.closeTo(1.6, 9) });
  expect(found?.to).toEqual({ x: expect.closeTo(6 - 1.8, 9), y: expect.closeTo(8 - 2.4, 9) });
});

test('from a corner to a side, whichever comes first', () => {
  const [one, other] = [rectangle(0, 0, 4, 3), rectangle(4.5, 1, 9, 7)];
  expect(nearestPlaces(one, other, 2)?.gap).toBeCloseTo(0.5, 12);
  expect(nearestPlaces(other, one, 2)?.gap).toBeCloseTo(0.5, 12);
});

test('0 where they cross, nothing where all are farther', () => {
  expect(nearestPlaces(rectangle(0, 0, 4, 3), rectangle(3, -1, 5, 2), 1)?.gap).toBe(0);
  expect(nearestPlaces(circle(0, 0, 2), circle(6, 8, 3), 4.9)).toBeUndefined();
});

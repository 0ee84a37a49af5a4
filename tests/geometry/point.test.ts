/** Vector steps on 3-4-5 and 5-12-13 triangles, by hand. */
import { expect, test } from 'vitest';
import { add, cross, distance, dot, pointOnCircle, scale, subtract, turnLeft } from '#geometry/point.ts';

const a = { x: 3, y: 4 };
const b = { x: -5, y: 12 };

test('sums, differences and multiples go by coordinate', () => {
  expect(add(a, b)).toEqual({ x: -2, y: 16 });
  expect(subtract(a, b)).toEqual({ x: 8, y: -8 });
  expect(scale(b, 2.5)).toEqual({ x: -12.5, y: 30 });
});

test('the inner product is −15 + 48, the cross product 36 + 20 and positive as b turns left of a', () => {
  expect(dot(a, b)).toBe(33);
  expect(cross(a, b)).toBe(56);
  expect(cross(b, a)).toBe(-56);
});

test('distance is by Pythagoras', () => {
  expect(distance({ x: 1, y: 2 }, { x: 6, y: 14 })).toBe(13);
});

test('a quarter turn to the left takes x to y', () => {
  expect(turnLeft(a)).toEqual({ x: -4, y: 3 });
});

test('30° round a circle of radius 4 about (1, 2) is (1 + 2√3, 4)', () => {
  const at = pointOnCircle({ x: 1, y: 2 }, 4, Math.PI / 6);
  expect(at.x).toBeCloseTo(1 + 2 * Math.sqrt(3), 12);
  expect(at.y).toBeCloseTo(4, 12);
});

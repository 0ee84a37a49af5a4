/** Maps of the plane with six different figures: worked by hand. */
import { describe, expect, test } from 'vitest';
import {
  type Affine,
  areEqualAxes,
  compose,
  determinant,
  isIdentity,
  keepsCircles,
  MIRROR_X,
  mapPoint,
  mapVector,
  scaling,
} from '#drawing/curves/affine.ts';

const map: Affine = { xx: 2, xy: -3, x0: 5, yx: 7, yy: 11, y0: -13 };
const other: Affine = { xx: 0.5, xy: 4, x0: -6, yx: -1.5, yy: 3, y0: 9 };
const point = { x: 17, y: -19 };

test('a point is turned, stretched and shifted, a direction not shifted', () => {
  // 2 · 17 + 3 · 19 + 5 and 7 · 17 − 11 · 19 − 13.
  expect(mapPoint(map, point)).toEqual({ x: 96, y: -103 });
  expect(mapVector(map, point)).toEqual({ x: 91, y: -90 });
});

test('two maps in one are the inner one first, then the outer', () => {
  expect(mapPoint(compose(map, other), point)).toEqual(mapPoint(map, mapPoint(other, point)));
  expect(mapPoint(compose(other, map), point)).toEqual(mapPoint(other, mapPoint(map, point)));
  expect(mapPoint(compose(map, other), point)).not.toEqual(mapPoint(compose(other, map), point));
});

test('an area grows by the determinant, which a mirror turns negative', () => {
  expect(determinant(map)).toBe(2 * 11 + 3 * 7);
  expect(determinant(compose(MIRROR_X, map))).toBe(-43);
  expect(mapPoint(MIRROR_X, point)).toEqual({ x: -17, y: -19 });
  expect(mapPoint(scaling(2.5), point)).toEqual({ x: 42.5, y: -47.5 });
});

describe('only the map that changes nothing is the identity', () => {
  const none = scaling(1);
  test('and it is', () => expect(isIdentity(none)).toBe(true));
  test.each(['xx', 'xy', 'x0', 'yx', 'yy', 'y0'] as const)('not with another %s', (key) => {
    expect(isIdentity({ ...none, [key]: 0.25 })).toBe(false);
  });
});

describe('circles stay circles', () => {
  const turned = (factor: number, side: 1 | -1): Affine => ({
    xx: factor * Math.cos(0.7),
    yx: factor * Math.sin(0.7),
    xy: -side * factor * Math.sin(0.7),
    yy: side * factor * Math.cos(0.7),
    x0: 3,
    y0: -8,
  });

  test('turned, mirrored and scaled alike, however large or small', () => {
    for (const factor of [1e-4, 0.3, 1, 25.4, 1e5]) {
      expect(keepsCircles(turned(factor, 1))).toBe(true);
      expect(keepsCircles(turned(factor, -1))).toBe(true);
    }
  });

  test('not stretched one way, nor sheared', () => {
    expect(keepsCircles({ ...scaling(2), yy: 2.001 })).toBe(false);
    expect(keepsCircles({ ...scaling(2), yy: 1.999 })).toBe(false);
    expect(keepsCircles({ ...scaling(2), xy: 0.001 })).toBe(false);
    // As long as each other, but 120° apart.
    expect(areEqualAxes({ x: 1, y: 0 }, { x: -0.5, y: Math.sqrt(0.75) })).toBe(false);
    expect(areEqualAxes({ x: 3, y: 4 }, { x: -4, y: 3 })).toBe(true);
    expect(areEqualAxes({ x: 3, y: 4 }, { x: 4, y: -3 })).toBe(true);
  });
});

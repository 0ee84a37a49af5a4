/** Primitives under maps of the plane: each stays what it is, an arc by its bulge excepted where scales differ. */
import { describe, expect, test } from 'vitest';
import type { Affine } from '#drawing/curves/affine.ts';
import { type CurvePrimitive, mapPrimitive } from '#drawing/curves/curve-primitive.ts';

/** (x, y) → (2 x − 3 y + 5, 7 x + 11 y − 13). */
const map: Affine = { xx: 2, xy: -3, x0: 5, yx: 7, yy: 11, y0: -13 };
const near = (x: number, y: number) => ({ x: expect.closeTo(x, 9), y: expect.closeTo(y, 9) });

test('a line by its ends', () => {
  expect(mapPrimitive(map, { kind: 'line', start: { x: 1, y: 2 }, end: { x: -4, y: 3 } })).toEqual({
    kind: 'line',
    start: { x: 1, y: 16 },
    end: { x: -12, y: -8 },
  });
});

test('a spline by its points alone', () => {
  const spline: CurvePrimitive = {
    kind: 'spline',
    degree: 1,
    knots: [0, 0, 3, 3],
    points: [
      { x: 1, y: 2 },
      { x: -4, y: 3 },
    ],
    weights: [1, 0.5],
  };
  expect(mapPrimitive(map, spline)).toEqual({
    ...spline,
    points: [
      { x: 1, y: 16 },
      { x: -12, y: -8 },
    ],
  });
});

test('a conic by its centre as a place and its axes as directions, with its ends if it has them', () => {
  const conic: CurvePrimitive = {
    kind: 'conic',
    center: { x: 1, y: 2 },
    across: { x: 3, y: 0 },
    up: { x: -1, y: 1 },
    from: 0.3,
    sweep: -1.2,
  };
  const mapped = {
    ...conic,
    center: { x: 1, y: 16 },
    across: { x: 6, y: 21 },
    up: { x: -5, y: 4 },
  };
  expect(mapPrimitive(map, conic)).toEqual(mapped);
  const ends = { start: { x: 1, y: 2 }, end: { x: -4, y: 3 } };
  expect(mapPrimitive(map, { ...conic, ends })).toEqual({
    ...mapped,
    ends: { start: { x: 1, y: 16 }, end: { x: -12, y: -8 } },
  });
});

describe('an arc by its bulge: from (1, 2) to (9, 8) through (6.5, 3), R 6.25 about (2.75, 8)', () => {
  const arc: CurvePrimitive = { kind: 'bulge', start: { x: 1, y: 2 }, end: { x: 9, y: 8 }, bulge: 0.5 };

  test('keeps it where it is turned and scaled, and changes its sign where it is mirrored', () => {
    const turned: Affine = { xx: 0, xy: -3, x0: 1, yx: 3, yy: 0, y0: 4 };
    expect(mapPrimitive(turned, arc)).toEqual({
      kind: 'bulge',
      start: { x: -5, y: 7 },
      end: { x: -23, y: 31 },
      bulge: 0.5,
    });
    expect(mapPrimitive({ ...turned, xy: 3 }, arc)).toMatchObject({ start: { x: 7, y: 7 }, bulge: -0.5 });
  });

  test('is part of an ellipse where it is stretched by 3 and 2', () => {
    const stretched = mapPrimitive({ xx: 3, xy: 0, x0: 1, yx: 0, yy: 2, y0: -1 }, arc);
    if (stretched.kind !== 'conic') throw new Error('a conic');
    const { center, across, up, from, sweep, ends } = stretched;
    expect(center).toEqual(near(9.25, 15));
    expect(ends).toEqual({ start: { x: 4, y: 3 }, end: { x: 28, y: 15 } });
    const at = (share: number) => {
      const [c, s] = [Math.cos(from + sweep * share), Math.sin(from + sweep * share)];
      return { x: center.x + across.x * c + up.x * s, y: center.y + across.y * c + up.y * s };
    };
    expect([at(0), at(0.5), at(1)]).toEqual([near(4, 3), near(20.5, 5), near(28, 15)]);
  });
});

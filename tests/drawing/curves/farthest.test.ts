/** How far out curves reach, by the farthest coordinate. */
import { expect, test } from 'vitest';
import type { CurvePrimitive } from '#drawing/curves/curve-primitive.ts';
import { boxOfPrimitives, farthestOf, farthestOfSpans } from '#drawing/curves/farthest.ts';
import { lineSpan } from '#geometry/span.ts';

const line = (x0: number, y0: number, x1: number, y1: number): CurvePrimitive => ({
  kind: 'line',
  start: { x: x0, y: y0 },
  end: { x: x1, y: y1 },
});
const spline = (...points: readonly { x: number; y: number }[]): CurvePrimitive => ({
  kind: 'spline',
  degree: 1,
  knots: [],
  points,
  weights: undefined,
});
const conic = (up: { x: number; y: number }): CurvePrimitive => ({
  kind: 'conic',
  center: { x: 10, y: -20 },
  across: { x: 3, y: 4 },
  up,
  from: 0,
  sweep: 1.5 * Math.PI,
});

test('lines and arcs by their ends, splines by their control points', () => {
  expect(farthestOf([])).toBe(0);
  expect(farthestOf([line(-7, 3, 2, -9)])).toBe(9);
  expect(farthestOf([line(-11, 3, 2, -9)])).toBe(11);
  expect(farthestOf([{ kind: 'bulge', start: { x: 1, y: 5 }, end: { x: -6, y: 2 }, bulge: 3 }])).toBe(6);
  expect(farthestOf([spline({ x: 2, y: -3 }, { x: 1, y: 8 }, { x: -7, y: 0 })])).toBe(8);
  expect(farthestOf([line(0, 0, 1, 12), line(0, 0, 1, 5)])).toBe(12);
});

test('an ellipse by its centre and its larger axis, a circle by a thousandth of that', () => {
  expect(farthestOf([conic({ x: -1, y: 0.5 })])).toBe(24);
  expect(farthestOf([conic({ x: -1, y: 6 })])).toBe(26);
  expect(farthestOf([conic({ x: -4, y: 3 })])).toBeCloseTo(0.024, 12);
});

test('what is no number comes out as none', () => {
  expect(farthestOf([line(0, 0, 1, 5), spline({ x: Number.NaN, y: 0 })])).toBeNaN();
});

test('spans by their ends', () => {
  const at = (x0: number, y0: number, x1: number, y1: number) => lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 });
  expect(farthestOfSpans([at(1, 2, 3, 4), at(-5, 2, 3, 4)])).toBe(5);
  expect(farthestOfSpans([at(1, -6, 3, 4), at(1, 2, 3, 4)])).toBe(6);
  expect(farthestOfSpans([at(1, 2, -7, 4)])).toBe(7);
  expect(farthestOfSpans([at(1, 2, 3, -8)])).toBe(8);
});

test('a box round ends, control points and thirds of a conic; not round what is infinite', () => {
  expect(
    boxOfPrimitives([line(-7, 3, 2, -9), spline({ x: 4, y: 1 }, { x: Number.POSITIVE_INFINITY, y: 50 })]),
  ).toEqual({
    minX: -7,
    minY: -9,
    maxX: 4,
    maxY: 3,
  });
  // Three quarters of a turn: the places at 0, 90, 180 and 270°.
  expect(boxOfPrimitives([conic({ x: -1, y: 6 })])).toEqual({
    minX: expect.closeTo(7, 9),
    minY: expect.closeTo(-26, 9),
    maxX: expect.closeTo(13, 9),
    maxY: expect.closeTo(-14, 9),
  });
});

test('a box round the start, the end and two places between of a conic that leans', () => {
  const leaning: CurvePrimitive = {
    kind: 'conic',
    center: { x: 1, y: 2 },
    across: { x: 3, y: 4 },
    up: { x: -2, y: 1 },
    from: 0.4,
    sweep: 1.2,
  };
  const at = (t: number) => [1 + 3 * Math.cos(t) - 2 * Math.sin(t), 2 + 4 * Math.cos(t) + Math.sin(t)];
  const places = [0.4, 0.8, 1.2, 1.6].map(at);
  const [xs, ys] = [places.map(([x = 0]) => x), places.map(([, y = 0]) => y)];
  expect(boxOfPrimitives([leaning])).toEqual({
    minX: expect.closeTo(Math.min(...xs), 9),
    minY: expect.closeTo(Math.min(...ys), 9),
    maxX: expect.closeTo(Math.max(...xs), 9),
    maxY: expect.closeTo(Math.max(...ys), 9),
  });
});

import { expect, test } from 'vitest';
import { type Loop, loopArea, pointAlong } from '#geometry/span.ts';
import { stretchSpans } from '#geometry/spans/stretch-spans.ts';
import { circle, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { tessellate } from '#support/geometry/tessellate.ts';

test('a circle stretched alike stays a circle', () => {
  const [half] = stretchSpans(circle(10, 20, 30), { x: 1.02, y: 1.02 });
  expect(half).toMatchObject({ kind: 'arc', radius: 30.6 });
  expect(half?.kind === 'arc' ? half.center : undefined).toEqual({ x: 10.2, y: 20.4 });
});

test.each([
  [0.9, 1.1],
  [1.003, 0.999],
])('a circle stretched by %f and %f follows its ellipse within a micrometre', (x, y) => {
  const arcs = stretchSpans(circle(0, 0, 500), { x, y });
  for (const arc of arcs) {
    for (let step = 0; step <= 20; step++) {
      const point = pointAlong(arc, step / 20);
      const off = (Math.hypot(point.x / x, point.y / y) - 500) * Math.min(x, y);
      expect(Math.abs(off)).toBeLessThan(0.0015);
    }
  }
  // The area of an ellipse.
  expect(Math.abs(loopArea(arcs) / (Math.PI * 500 * 500 * x * y) - 1)).toBeLessThan(1e-5);
});

test('a loop stretched is closed, and each of its corners where the factors put it', () => {
  const loop: Loop = roundedRectangle(0, 0, 60, 40, 6);
  const stretched = stretchSpans(loop, { x: 1.01, y: 0.97 });
  stretched.forEach((span, index) => {
    expect(span.start).toEqual(stretched.at(index - 1)?.end);
  });
  const places = tessellate(stretched);
  for (const { start } of loop) {
    expect(places.some(([x, y]) => Math.hypot(x - start.x * 1.01, y - start.y * 0.97) < 1e-9)).toBe(true);
  }
});

test('a rectangle stays one: as it is, stretched alike, and stretched one way alone', () => {
  const plate = rectangle(1, 2, 5, 4);
  expect(stretchSpans(plate, { x: 1, y: 1 })).toEqual(plate);
  expect(stretchSpans(plate, { x: 1.5, y: 1.5 })).toEqual(rectangle(1.5, 3, 7.5, 6));
  expect(stretchSpans(plate, { x: 1, y: 1.5 })).toEqual(rectangle(1, 3, 5, 6));
  expect(stretchSpans(plate, { x: 1.5, y: 1 })).toEqual(rectangle(1.5, 2, 7.5, 4));
});

test('arcs are halved no more than it takes: a lesser stretch and a lesser radius need fewer', () => {
  const count = (radius: number, x: number, y: number) => stretchSpans(circle(0, 0, radius), { x, y }).length;
  expect(count(0.01, 0.99, 1.01)).toBe(2);
  expect(count(30, 1.003, 0.999)).toBeLessThan(count(500, 1.003, 0.999));
  expect(count(500, 1.003, 0.999)).toBeLessThan(count(500, 0.9, 1.1));
  expect(count(500, 0.9, 1.1)).toBeLessThanOrEqual(256);
});

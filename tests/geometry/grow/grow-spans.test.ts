/** Bands along lines and arcs, by their areas (Steiner: a strip of length L grown by r has 2 L r + π r²). */
import { expect, test } from 'vitest';
import { growSpans } from '#geometry/grow/grow-spans.ts';
import { labelPoint } from '#geometry/loops/label-point.ts';
import { arcSpan, lineSpan, loopsArea } from '#geometry/span.ts';
import { rectangle } from '#support/geometry/shapes.ts';

test('along a line: two straights and two half circles', () => {
  const area = loopsArea(growSpans([lineSpan({ x: 3, y: -1 }, { x: 15, y: 4 })], 0.7));
  expect(area).toBeCloseTo(2 * 13 * 0.7 + Math.PI * 0.49, 4);
});

test('along an arc: a piece of a ring, with two half circles', () => {
  const arc = arcSpan({ center: { x: 2, y: 5 }, radius: 6, from: 0.4, sweep: -1.9 });
  const area = loopsArea(growSpans([arc], 0.5));
  expect(area).toBeCloseTo(2 * 6 * 1.9 * 0.5 + Math.PI * 0.25, 4);
});

test('along an arc narrower than the band: the sector to its centre, no more', () => {
  const arc = arcSpan({ center: { x: 0, y: 0 }, radius: 0.4, from: 0, sweep: Math.PI });
  const [outer, ...holes] = growSpans([arc], 0.9);
  expect(holes).toEqual([]);
  expect(outer).toBeDefined();
  // All of the half disc lies in it, and it reaches 1.3 mm from the centre on the arc's side.
  const area = loopsArea(growSpans([arc], 0.9));
  expect(area).toBeGreaterThan((Math.PI * 1.3 ** 2) / 2);
  expect(area).toBeLessThan(Math.PI * 1.3 ** 2);
});

test('round a rectangle: a frame, sharp inside and round outside', () => {
  const band = growSpans(rectangle(0, 0, 20, 9), 1.25);
  expect(band).toHaveLength(2);
  expect(loopsArea(band)).toBeCloseTo(
    2 * 29 * 1.25 + Math.PI * 1.25 ** 2 + 20 * 9 - (20 - 2.5) * (9 - 2.5),
    3,
  );
});

/** Bars of 3 by 0.5 mm in a row, so far apart. */
const bars = (apart: number) =>
  [0, 1, 2].map((step) => {
    const x = step * (3 + apart);
    return lineSpan({ x, y: 2 }, { x: x + 3, y: 2.5 });
  });
const length = Math.hypot(3, 0.5);

test('bands apart are one each, in the order of their lines, as if each were alone', () => {
  const lines = bars(2.6);
  const together = growSpans(
    [lines[2], lines[0], lines[1]].filter((each) => each !== undefined),
    1.25,
  );
  expect(together).toHaveLength(3);
  const middles = together.map((loop) => Math.round(labelPoint([loop]).x));
  expect(middles).toEqual([13, 2, 7]);
  for (const band of together)
    expect(loopsArea([band])).toBeCloseTo(2 * length * 1.25 + Math.PI * 1.25 ** 2, 4);
});

test('bands that come together by a hundredth are one', () => {
  const [band, ...others] = growSpans(bars(2.4), 1.25);
  expect(others).toEqual([]);
  expect(loopsArea(band === undefined ? [] : [band])).toBeLessThan(
    3 * (2 * length * 1.25 + Math.PI * 1.25 ** 2),
  );
});

test('a band of a hundredth along lines that leave that little between them is one', () => {
  const [low, high] = [0, 0.0199].map((y) => lineSpan({ x: 0, y }, { x: 40, y }));
  expect(
    growSpans(
      [low, high].filter((each) => each !== undefined),
      0.01,
    ),
  ).toHaveLength(1);
});

test('nothing grows from nothing', () => {
  expect(growSpans([], 1)).toEqual([]);
});

/** Narrow places that begin where sides touch: horns, and holes that touch a side or each other. */
import { describe, expect, test } from 'vitest';
import { narrowPlaces } from '#checks/narrow-places.ts';
import { sidesOf } from '#checks/sides.ts';
import { arcSpan, type Loop, lineSpan, reverseSpans, type Span } from '#geometry/span.ts';
import { moveSpan } from '#support/geometry/move-spans.ts';
import { circle, polygon, rectangle } from '#support/geometry/shapes.ts';

const placesIn = (loops: readonly Loop[]) =>
  narrowPlaces(sidesOf(loops), { widestOf: () => 3, limitOf: () => 3 });

describe('sides that touch', () => {
  // Between a line and a circle of R 10 on it: hypot(x, 10) − 10 = 0.05.
  const foot = Math.sqrt(10.05 ** 2 - 10 ** 2);
  const quarter: Span = arcSpan({ center: { x: 0, y: 10 }, radius: 10, from: 0, sweep: -Math.PI / 2 });
  const horn: Loop = [
    ...polygon([
      [0, 0],
      [20, 0],
      [20, 10],
      [10, 10],
    ]).slice(0, 3),
    quarter,
  ];
  const begunAt = (number: number): Loop => [...horn.slice(number), ...horn.slice(0, number)];

  test.each([0, 1, 3])(
    'a horn between a line and an arc is reported where it is 0.05 wide, its border begun at span %i',
    (begun) => {
      const [place, more] = placesIn([begunAt(begun)]);
      expect(more).toBeUndefined();
      expect(place?.width).toBeCloseTo(0.05, 6);
      const [near, far] = [place?.from, place?.to].sort((a, b) => (a?.y ?? 0) - (b?.y ?? 0));
      expect(near).toEqual({ x: expect.closeTo(foot, 6), y: expect.closeTo(0, 9) });
      expect(far).toEqual({
        x: expect.closeTo((foot * 10) / 10.05, 6),
        y: expect.closeTo(10 - 100 / 10.05, 6),
      });
    },
  );

  test('nothing is asked of a horn where no width is, and lines to follow make none', () => {
    const sides = sidesOf([horn]);
    expect(narrowPlaces(sides, { widestOf: () => 3, limitOf: () => 0 })).toEqual([]);
    expect(narrowPlaces(sides, { widestOf: () => 0, limitOf: () => 3 })).toEqual([]);
    expect(narrowPlaces(sides, { widestOf: () => 3, limitOf: () => 3, bothSides: true })).toEqual([]);
  });

  test.each([
    ['larger', 0],
    ['smaller', 1],
  ])('two holes of R 7 and R 4 that touch part on both sides, the %s drawn first', (_, first) => {
    const holes = [circle(12, 15, 7), circle(23, 15, 4)].map(reverseSpans);
    const places = placesIn([rectangle(0, 0, 40, 30), ...(first === 0 ? holes : [...holes].reverse())]);
    expect(places.map(({ width }) => width)).toEqual([expect.closeTo(0.05, 6), expect.closeTo(0.05, 6)]);
    // Seen from the larger, 4.05 from the smaller's middle: 7² + 11² − 2 · 7 · 11 cos t = 4.05².
    const cosine = (7 ** 2 + 11 ** 2 - 4.05 ** 2) / (2 * 7 * 11);
    const up = 7 * Math.sqrt(1 - cosine ** 2);
    const onLarger = places.map(({ from, to }) => (first === 0 ? from : to)).sort((a, b) => a.y - b.y);
    expect(onLarger).toEqual([
      { x: expect.closeTo(12 + 7 * cosine, 6), y: expect.closeTo(15 - up, 6) },
      { x: expect.closeTo(12 + 7 * cosine, 6), y: expect.closeTo(15 + up, 6) },
    ]);
  });

  test('a strip that ends before it has come to 0.05 is reported at its end', () => {
    const stepped = polygon([
      [0, 0],
      [12.4, 0],
      [12.4, -10],
      [40, -10],
      [40, 30],
      [0, 30],
    ]);
    const places = placesIn([stepped, reverseSpans(circle(12, 5, 5))]);
    const wide = places.map(({ width }) => width).sort((a, b) => a - b);
    expect(wide).toEqual([expect.closeTo(Math.sqrt(0.4 ** 2 + 5 ** 2) - 5, 6), expect.closeTo(0.05, 6)]);
  });
});

test('a hole that the edge of the sheet cuts off leaves land on both sides of the cut, whichever touch is found first', () => {
  // Of R 5, cut off by the edge at y = 10 from x = 18 to 22: the land begins there and is 0.05 wide a little farther out.
  const half = Math.asin(2 / 5);
  const arc = arcSpan({
    center: { x: 20, y: 10 - Math.sqrt(21) },
    radius: 5,
    from: Math.PI / 2 - half,
    sweep: 2 * half - 2 * Math.PI,
  });
  const hole: Loop = [arc, lineSpan(arc.end, arc.start)];
  const edge = lineSpan({ x: 37, y: 10 }, { x: 0, y: 10 });
  const sheet: Loop = [...rectangle(0, -9, 37, 10).slice(0, 2), edge, lineSpan(edge.end, { x: 0, y: -9 })];
  const placesOf = (loops: readonly Loop[]) =>
    placesIn(loops)
      .filter(({ width }) => width < 0.06)
      .map(({ from, to }) => (from.x + to.x) / 2)
      .sort((a, b) => a - b);
  const [left, right, more] = placesOf([hole, sheet]);
  expect(more).toBeUndefined();
  expect(20 - (left ?? 0)).toBeCloseTo((right ?? 0) - 20, 6);
  expect(left).toBeLessThan(18);
  expect(left).toBeGreaterThan(17.8);
  // Mirrored about y = 0 every border runs the other way.
  const mirrored = [hole, sheet].map((loop) =>
    reverseSpans(
      loop.map((span) => moveSpan(span, { turn: 0, factor: 1, mirrored: true, shift: { x: 0, y: 0 } })),
    ),
  );
  expect(placesOf(mirrored)).toEqual([expect.closeTo(left ?? 0, 6), expect.closeTo(right ?? 0, 6)]);
});

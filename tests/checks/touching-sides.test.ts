/** Narrow places that begin where sides touch: horns, and holes that touch a side or each other. */
import { describe, expect, test } from 'vitest';
import { narrowPlaces, sidesOf } from '#checks/narrow-places.ts';
import { arcSpan, type Loop, reverseSpans, type Span } from '#geometry/span.ts';
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

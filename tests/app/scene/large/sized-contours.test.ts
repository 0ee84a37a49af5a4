/** What of a large part is drawn as lines and what as dots, at a scale and in a view. */
import { describe, expect, test } from 'vitest';
import { contoursIn, countFrom, dotsBelow, sizedContours } from '#app/scene/large/sized-contours.ts';
import { contourOfLoop } from '#handoff/contour.ts';
import { circle, rectangle } from '#support/geometry/shapes.ts';

/** A plate of 60 × 25 with a slot of 9 × 2, and holes of 3, 0.8 and 0.5 mm. */
const drawn = [circle(12, 7, 0.4), rectangle(30, 11, 39, 13), circle(50, 20, 1.5), rectangle(0, 0, 60, 25)];
const contours = [...drawn, circle(14, 7.5, 0.25)].map(contourOfLoop);
const sized = sizedContours(contours);

describe('contours by size', () => {
  test('are as large as the longer side of their box, arcs by what they bulge, largest first', () => {
    expect([...sized.sizes].map((size) => Number(size.toFixed(5)))).toEqual([60, 9, 3, 0.8, 0.5]);
    expect(sized.contours).toEqual([3, 1, 2, 0, 4].map((number) => contours[number]));
    expect([...sized.middles.subarray(3, 6)]).toEqual([34.5, 12, 0]);
    expect([...sized.middles.subarray(9, 12)]).toEqual([12, 7, 0]);
  });

  test('are counted from a size on, that size among them', () => {
    const counts = [70, 60, 9.1, 9, 0.6, 0.5, 0].map((least) => countFrom(sized, least));
    expect(counts).toEqual([0, 1, 1, 2, 4, 5, 5]);
    expect(countFrom(sizedContours([]), 1)).toBe(0);
  });

  test('are found where they meet a box and are large enough', () => {
    const box = { minX: 11, minY: 6, maxX: 31, maxY: 12 };
    expect(contoursIn(sized, box, 0.7)).toEqual([3, 1, 0].map((number) => contours[number]));
    expect(contoursIn(sized, box, 1)).toEqual([3, 1].map((number) => contours[number]));
    expect(contoursIn(sized, { minX: 70, minY: 0, maxX: 80, maxY: 9 }, 0)).toEqual([]);
  });

  test('the same among so many that they are found by a tree', () => {
    const many = sizedContours(
      Array.from({ length: 400 }, (_, n) => contourOfLoop(circle(3 * n, 7, 0.3 + 0.001 * n))),
    );
    const found = contoursIn(many, { minX: 29, minY: 0, maxX: 61.5, maxY: 20 }, 0.629);
    // Holes 15 to 20: those before are too small, that at 63 begins at 62.36.
    expect(
      found.map(({ vertices }) => Math.round(((vertices[0]?.[0] ?? 0) + (vertices[1]?.[0] ?? 0)) / 6)),
    ).toEqual([20, 19, 18, 17, 16, 15]);
  });

  test('are dots below a size, where they are and as large', () => {
    const { middles, sizes } = dotsBelow(sized, 3, 0.1);
    expect([...sizes].map((size) => Number(size.toFixed(5)))).toEqual([0.8, 0.5]);
    expect([...middles]).toEqual([12, 7, 0, 14, 7.5, 0]);
    expect(dotsBelow(sized, 3.1, 0.1).sizes).toHaveLength(3);
    expect(dotsBelow(sized, 0.4, 0.1).sizes).toHaveLength(0);
  });

  test('those far smaller than a cell are one dot in it that covers as much, nearer the larger one', () => {
    // The cell from 10 to 20 holds the holes of 0.8 and 0.5 mm, that from 50 to 60 the hole of 3.
    const { middles, sizes } = dotsBelow(sized, 8, 10);
    expect([...sizes].map((size) => Number(size.toFixed(5)))).toEqual([
      3,
      Number(Math.hypot(0.8, 0.5).toFixed(5)),
    ]);
    expect(middles[3]).toBeCloseTo((12 * 0.64 + 14 * 0.25) / 0.89, 5);
    expect(middles[4]).toBeCloseTo((7 * 0.64 + 7.5 * 0.25) / 0.89, 5);
    // Of a cell half as wide the hole of 3 mm is more than the half.
    expect(dotsBelow(sized, 8, 5).sizes[0]).toBe(3);
    expect(dotsBelow(sized, 8, 5).sizes).toHaveLength(2);
  });

  test('nothing of no extent is one', () => {
    expect(sizedContours([{ closed: false, vertices: [[3, 4, 0]] }]).contours).toEqual([]);
  });
});

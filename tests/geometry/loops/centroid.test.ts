/** Centroids from any book of statics. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { centroidOf } from '#geometry/loops/centroid.ts';
import { arcSpan, lineSpan, reverseSpans } from '#geometry/span.ts';
import { circle, polygon, rectangle } from '#support/geometry/shapes.ts';

const near = (x: number, y: number) => ({ x: expect.closeTo(x, 9), y: expect.closeTo(y, 9) });

test('a triangle: the mean of its corners', () => {
  fc.assert(
    fc.property(fc.integer({ min: -90, max: 90 }), fc.integer({ min: 1, max: 60 }), (x, height) => {
      const triangle = polygon([
        [x, -4],
        [x + 11, -4],
        [x + 2, height],
      ]);
      expect(centroidOf([triangle])).toEqual(near(x + 13 / 3, (height - 8) / 3));
    }),
  );
});

test('a half disc of radius 6: 4 r / 3π over its chord', () => {
  const arc = arcSpan({ center: { x: 10, y: 3 }, radius: 6, from: 0, sweep: Math.PI });
  expect(centroidOf([[arc, lineSpan(arc.end, arc.start)]])).toEqual(near(10, 3 + 8 / Math.PI));
});

test('a plate 12 × 8 with a hole of radius 2 about (3, 5): the hole pulls it the other way', () => {
  const hole = 4 * Math.PI;
  expect(centroidOf([rectangle(0, 0, 12, 8), reverseSpans(circle(3, 5, 2))])).toEqual(
    near((96 * 6 - hole * 3) / (96 - hole), (96 * 4 - hole * 5) / (96 - hole)),
  );
});

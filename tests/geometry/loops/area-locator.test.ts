import { describe, expect, test } from 'vitest';
import { locateAreas } from '#geometry/loops/area-locator.ts';
import { reverseSpans } from '#geometry/span.ts';
import { circle, polygon, rectangle } from '#support/geometry/shapes.ts';

/** Land 50 × 30 with a round hole that a second area fills, and a third that lies on its own. */
const areas = [
  [rectangle(0, 0, 50, 30), reverseSpans(circle(20, 12, 6))],
  [circle(20, 12, 6)],
  [rectangle(70, 5, 80, 25)],
];

describe('which area', () => {
  const { at, bordering, meeting } = locateAreas(areas);
  test.each([
    [5, 5, 0],
    [20, 12, 1],
    [24, 15, 1],
    [25, 17, 0],
    [75, 24, 2],
    [60, 15, -1],
    [20, 40, -1],
  ])('(%d, %d) lies in %d', (x, y, area) => {
    expect(at({ x, y })).toBe(area);
  });

  test('has a border within a clearance, exactly', () => {
    expect(bordering({ x: 29, y: 12 }, 2.99)).toEqual([]);
    expect(bordering({ x: 29, y: 12 }, 3.01)).toEqual([0, 1]);
    expect(bordering({ x: 62, y: 15 }, 8)).toEqual([2]);
    expect(bordering({ x: 62, y: 15 }, 12)).toEqual([0, 2]);
    // In the corner of the box round the circle, but 2.5 mm from the circle itself.
    expect(bordering({ x: 26, y: 18 }, 2)).toEqual([]);
  });

  test('has a box that meets another', () => {
    expect(meeting({ minX: 27, minY: 1, maxX: 71, maxY: 6 })).toEqual([0, 2]);
  });
});

test('an area of a hundred corners is found as one of four is', () => {
  const round = polygon(
    Array.from({ length: 100 }, (_, i) => [
      40 + 20 * Math.cos((2 * Math.PI * i) / 100),
      10 + 20 * Math.sin((2 * Math.PI * i) / 100),
    ]),
  );
  const { at } = locateAreas([[rectangle(0, 0, 5, 5)], [round]]);
  expect([at({ x: 40, y: 28 }), at({ x: 57, y: 27 }), at({ x: 2, y: 3 })]).toEqual([1, -1, 0]);
});

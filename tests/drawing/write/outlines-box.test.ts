/** Extents of outlines to be written, arcs with their bellies: half discs worked by hand. */
import { expect, test } from 'vitest';
import { boxOfOutlines } from '#drawing/write/outlines-box.ts';
import { EMPTY_BOX } from '#geometry/box.ts';

const outline = (
  closed: boolean,
  ...vertices: readonly (readonly [x: number, y: number, bulge: number])[]
) => ({
  layer: 'RIM',
  closed,
  vertices,
});

test('the half disc on the right of an open outline counts; the last vertex has no arc after it', () => {
  const open = outline(false, [3, 4, 0], [13, 4, 1], [13, 10, 1]);
  expect(boxOfOutlines([open])).toEqual({ minX: 3, minY: 4, maxX: expect.closeTo(16, 9), maxY: 10 });
});

test('closed, the arc back to the first vertex counts as well', () => {
  // About (8, 7) with a radius of √(5² + 3²), from (13, 10) over the top to (3, 4).
  const radius = Math.sqrt(34);
  expect(boxOfOutlines([outline(true, [3, 4, 0], [13, 4, 0], [13, 10, 1])])).toEqual({
    minX: expect.closeTo(8 - radius, 9),
    minY: 4,
    maxX: 13,
    maxY: expect.closeTo(7 + radius, 9),
  });
});

test('several outlines have one box, none the empty one', () => {
  const low = outline(true, [-7, -2, 0], [1, -2, 0], [0, 5, 0]);
  const high = outline(false, [20, 1, 0], [22, 9, 0]);
  expect(boxOfOutlines([low, high])).toEqual({ minX: -7, minY: -2, maxX: 22, maxY: 9 });
  expect(boxOfOutlines([])).toEqual(EMPTY_BOX);
});

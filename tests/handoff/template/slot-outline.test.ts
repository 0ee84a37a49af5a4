/** Edges of slots from parallels, against the same edges read on the grid by winding number, which knows nothing of how they are cut. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parallelStrip } from '#geometry/grow/parallel-strip.ts';
import { loopsArea, spansLength } from '#geometry/span.ts';
import { stretchAlong } from '#handoff/stretch-along.ts';
import { outlineOnGrid, slotOutline } from '#handoff/template/slot-outline.ts';
import { curveGap } from '#support/geometry/curve-gap.ts';
import { randomOutlines } from '#support/geometry/random-outlines.ts';
import { openLine } from '#support/geometry/shapes.ts';

test('a slot that runs into itself is read on the grid: two edges, and the piece between them', () => {
  const ring = openLine([0, 0], [30, 0], [30, 20], [0, 20], [0, 0.5]).spans;
  const band = { low: -1, high: 1, reach: 1 };
  expect(slotOutline(ring, band)).toEqual(outlineOnGrid(ring, band));
  expect(slotOutline(ring, band)).toHaveLength(2);
});

test('along stretches of random lines, to either side: as on the grid, to a nanometre', () => {
  let made = 0;
  const tenths = fc.integer({ min: 0, max: 25 });
  const range = fc.tuple(
    fc.double({ min: 0, max: 0.4, noNaN: true }),
    fc.double({ min: 0.5, max: 0.9, noNaN: true }),
  );
  fc.assert(
    fc.property(randomOutlines, tenths, tenths, range, (outline, right, left, [from, to]) => {
      if (right + left === 0) return;
      const length = spansLength(outline);
      const stretch = stretchAlong(outline, { from: from * length, to: to * length });
      const band = { low: -right / 10 + 0, high: left / 10, reach: Math.max(left, right) / 10 };
      if (parallelStrip(stretch, band) === undefined) return;
      made++;
      const [exact, grid] = [slotOutline(stretch, band), outlineOnGrid(stretch, band)];
      expect(exact).toHaveLength(grid.length);
      expect(curveGap(exact.flat(), grid.flat())).toBeLessThan(1e-6);
      expect(loopsArea(exact)).toBeCloseTo(loopsArea(grid), 4);
    }),
    { numRuns: 150 },
  );
  expect(made).toBeGreaterThan(15);
});

import fc from 'fast-check';
import { test } from 'vitest';
import type { Loop } from '#geometry/span.ts';
import type { EdgeDatum } from '#part/job.ts';
import { makePlan } from '#plan/make-plan.ts';
import { compareOpenings, expectCutOnce } from '#support/compare-openings.ts';
import { partOf } from '#support/part-of.ts';
import { plainJob } from '#support/plain-job.ts';
import { circle, rectangle, roundedRectangle } from '#support/shapes.ts';

const DEPTHS = [0, 1, 1.6, 2.2, 3] as const;

/** Corners on a coarse grid, so that outlines share lines, nest, touch and cross. */
const onGrid = fc.integer({ min: 0, max: 8 }).map((step) => step * 5);

const outline: fc.Arbitrary<Loop> = fc
  .record({
    x: onGrid,
    y: onGrid,
    width: fc.integer({ min: 1, max: 5 }),
    height: fc.integer({ min: 1, max: 5 }),
    kind: fc.constantFrom('square', 'rounded', 'circle'),
  })
  .map(({ x, y, width, height, kind }) => {
    if (kind === 'circle') return circle(x + 10, y + 10, width * 2);
    if (kind === 'rounded') return roundedRectangle(x, y, x + width * 5, y + height * 5, 1.5);
    return rectangle(x, y, x + width * 5, y + height * 5);
  });

const drawnPart = fc.record({
  outlines: fc.array(outline, { minLength: 1, maxLength: 5 }),
  depths: fc.array(fc.constantFrom(...DEPTHS), { minLength: 12, maxLength: 12 }),
  factor: fc.integer({ min: 5, max: 20 }).map((tenths) => tenths / 10),
  edgeDatum: fc.constantFrom<EdgeDatum>('shallow-edge', 'shallow-edge', 'mid-wall', 'deep-foot'),
});

test('M3.1 M3.2 openings and pieces of random parts agree with buffers of an independent library (JSTS 2.12.1)', () => {
  fc.assert(
    fc.property(drawnPart, ({ outlines, depths, factor, edgeDatum }) => {
      const part = partOf({ sheet: rectangle(-10, -10, 80, 80), outlines });
      const asked = new Map(
        part.regions.map(({ id }, index) => [
          id,
          { depth: depths[index % depths.length] ?? 0, plus: 0.05, minus: 0.05 },
        ]),
      );
      const job = plainJob({ etchFactor: [[0, factor]], edgeDatum });
      const plan = makePlan({ part, asked, job });
      expectCutOnce(plan);
      compareOpenings(plan, job.process);
    }),
    { numRuns: Number(process.env['RUNS'] ?? 200), seed: Number(process.env['SEED'] ?? 20261125) },
  );
});

/** Random parts for property tests: outlines on a coarse grid, so that they share lines, nest, touch and cross. */
import fc from 'fast-check';
import type { Loop } from '#geometry/span.ts';
import type { EdgeDatum, Masking } from '#job/job.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { circle, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { partOf } from '#support/parts/part-of.ts';

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

export interface RandomPart {
  readonly outlines: readonly Loop[];
  readonly depths: readonly number[];
  readonly factor: number;
}

export const randomPart: fc.Arbitrary<RandomPart> = fc.record({
  outlines: fc.array(outline, { minLength: 1, maxLength: 5 }),
  depths: fc.array(fc.constantFrom(0, 1, 1.6, 2.2, 3), { minLength: 12, maxLength: 12 }),
  factor: fc.integer({ min: 5, max: 20 }).map((tenths) => tenths / 10),
});

/** A sheet with room all round every random part. */
export const randomSheet = rectangle(-10, -10, 80, 80);

/** A sheet whose edge random outlines share. */
export const TIGHT_SHEET = rectangle(0, 0, 80, 80);

export function planOf(
  { outlines, depths, factor }: RandomPart,
  edgeDatum: EdgeDatum = 'shallow-edge',
  sheet: Loop = randomSheet,
  masking: Masking = 'peel-next',
): EtchPlan {
  const part = partOf({ sheet, outlines });
  const asked = new Map(
    part.regions.map(({ id }, index) => [
      id,
      { depth: depths[index % depths.length] ?? 0, plus: 0.05, minus: 0.05 },
    ]),
  );
  return makePlan({ part, asked, job: plainJob({ etchFactor: [[0, factor]], edgeDatum, masking }) });
}

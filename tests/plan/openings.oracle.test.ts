import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isInsideLoops } from '#geometry/inside-loops.ts';
import { type Loop, pointAlong, tangentAlong } from '#geometry/span.ts';
import { bufferedOpenings, type OracleOpenings, type Place } from '#oracle/buffered-openings.ts';
import type { EdgeDatum } from '#part/job.ts';
import type { Part } from '#part/part.ts';
import { allowance } from '#plan/allowance.ts';
import { makePlan } from '#plan/make-plan.ts';
import { partOf } from '#support/part-of.ts';
import { plainJob } from '#support/plain-job.ts';
import { circle, rectangle, roundedRectangle } from '#support/shapes.ts';
import { tessellate } from '#support/tessellate.ts';

/** Borders may differ by what the contract allows a scribe line to be off, mm. */
const TOLERANCE = 0.005;

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
      comparePlans(part, asked, { factor, edgeDatum });
    }),
    { numRuns: Number(process.env['RUNS'] ?? 200), seed: Number(process.env['SEED'] ?? 20261125) },
  );
});

function comparePlans(
  part: Part,
  asked: ReadonlyMap<string, { depth: number; plus: number; minus: number }>,
  { factor, edgeDatum }: { factor: number; edgeDatum: EdgeDatum },
): void {
  const job = plainJob({ etchFactor: [[0, factor]], edgeDatum });
  const { stages } = makePlan({ part, asked, job });
  const regions = part.regions.map(({ id, loops }) => ({
    level: asked.get(id)?.depth ?? 0,
    rings: loops.map((loop) => tessellate(loop, 0.0004)),
  }));
  const undercut = { etchFactor: job.process.etchFactor, edgeDatum };
  const oracle = bufferedOpenings(regions, (level, depth) => allowance(undercut, { level, depth }));
  expect(stages.map(({ level }) => level)).toEqual(oracle.stages.map(({ level }) => level));
  const ours = stages.flatMap((stage) => besideLoops([...stage.piece, ...stage.opening]));
  const places = [...ours, ...besideRings(oracle)];
  for (const [index, stage] of stages.entries()) {
    const expected = oracle.stages[index];
    if (expected === undefined) continue;
    for (const place of places) {
      const where = `(${place.x}, ${place.y}) at level ${stage.level}`;
      expect(
        agrees(isInsideLoops(stage.opening, place), expected.isInOpening, place),
        `opening at ${where}`,
      ).toBe(true);
      expect(agrees(isInsideLoops(stage.piece, place), expected.isInPiece, place), `piece at ${where}`).toBe(
        true,
      );
    }
  }
}

/** Whether the oracle says the same of the place, or of one within the tolerance. */
function agrees(isInside: boolean, oracle: (place: Place) => boolean, { x, y }: Place): boolean {
  if (oracle({ x, y }) === isInside) return true;
  return Array.from({ length: 16 }, (_, index) => (index * Math.PI) / 8).some(
    (angle) =>
      oracle({ x: x + TOLERANCE * Math.cos(angle), y: y + TOLERANCE * Math.sin(angle) }) === isInside,
  );
}

/** Places just beside our own borders, on both sides: a border that is off by more than the tolerance tells here. */
function besideLoops(loops: readonly Loop[]): Place[] {
  return loops.flat().flatMap((span) =>
    [0.03, 0.5, 0.97].flatMap((share) => {
      const along = tangentAlong(span, share);
      const { x, y } = pointAlong(span, share);
      return [-0.0005, 0.0005].map((side) => ({ x: x - along.y * side, y: y + along.x * side }));
    }),
  );
}

/** Places beside the oracle's borders: an opening that we lack tells here. */
function besideRings({ borders }: OracleOpenings): Place[] {
  return borders.flat().flatMap((ring) =>
    ring.flatMap(([x, y], index) =>
      index % 25 === 0
        ? [
            { x: x - 0.006, y: y - 0.006 },
            { x: x + 0.006, y: y + 0.006 },
          ]
        : [],
    ),
  );
}

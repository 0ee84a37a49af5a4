/** A run that is masked again for each stage: windows, order, times, and how it compares with one coat. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distanceToSpan, loopArea, pointAlong, type Span } from '#geometry/span.ts';
import type { Masking } from '#job/job.ts';
import { allowance, cornerRadius, undercutOf } from '#plan/allowance.ts';
import { compareMaskings } from '#plan/compare-maskings.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { createClusterMemory } from '#plan/open-clusters.ts';
import { compareOpenings } from '#support/geometry/compare-openings.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';
import { planOf, randomPart, TIGHT_SHEET } from '#support/random-parts/random-part.ts';

const anyDatum = fc.constantFrom('shallow-edge', 'mid-wall', 'deep-foot');

const sheet = rectangle(-20, -20, 120, 80);

/** Three floors nested about one middle, 2.5, 4.0 and 6.5 deep: the levels of the published example. */
const nested = {
  part: partOf({
    sheet,
    outlines: [rectangle(0, 0, 100, 60), rectangle(20, 12, 80, 48), rectangle(35, 20, 65, 40)],
  }),
  depths: [
    [5, 30, 2.5],
    [25, 30, 4],
    [50, 30, 6.5],
  ] as const,
};

function nestedPlan(factor = 1, masking: Masking = 're-mask'): EtchPlan {
  const asked = askedAt(nested.part, nested.depths);
  const job = plainJob({ etchFactor: [[0, factor]], masking });
  return makePlan({ part: nested.part, asked, job: { ...job, stock: { ...job.stock, thickness: 10 } } });
}

test('M4.3 with one coat stages run from the deepest level; its floor is in the bath for 6.5 / 0.025 = 260 minutes', () => {
  const { stages } = nestedPlan(1, 'peel-next');
  expect(stages.map(({ number, base, level, etch }) => [number, base, level, etch])).toEqual([
    [1, 0, 6.5, 2.5],
    [2, 0, 4, 1.5],
    [3, 0, 2.5, 2.5],
  ]);
  expect(stages.map(({ startMinute }) => startMinute)).toEqual([0, 100, 160]);
  expect(stages.reduce((sum, { minutes }) => sum + minutes, 0)).toBeCloseTo(260, 9);
});

describe('M3.5 re-mask', () => {
  test('stages run from the shallowest, each from the floor of the one before, in the same minutes as with one coat', () => {
    const { stages } = nestedPlan();
    expect(stages.map(({ number, base, level, etch }) => [number, base, level, etch])).toEqual([
      [1, 0, 2.5, 2.5],
      [2, 2.5, 4, 1.5],
      [3, 4, 6.5, 2.5],
    ]);
    expect(stages.map(({ startMinute }) => startMinute)).toEqual([0, 100, 160]);
    expect(stages.reduce((sum, { minutes }) => sum + minutes, 0)).toBeCloseTo(6.5 / 0.025, 9);
  });

  test('each allowance is the stage’s own depth times the factor, as a manual publishes it (machine-translated; facts of the trade)', () => {
    // Etches 2.5 / 1.5 / 2.5 at φ = 0.678: 1.695, 1.017, 1.695 from floor to floor.
    const { stages } = nestedPlan(0.678);
    const insets = [1.695, 1.017, 1.695];
    const sides = [
      [100, 60],
      [60, 36],
      [30, 20],
    ] as const;
    stages.forEach(({ piece }, i) => {
      const [width, height] = sides[i] ?? [0, 0];
      const inset = insets[i] ?? 0;
      const [window] = piece;
      expect(piece).toHaveLength(1);
      expect(loopArea(window ?? [])).toBeCloseTo((width - 2 * inset) * (height - 2 * inset), 3);
    });
  });

  test('towards land the steps of every stage add up', () => {
    const undercut = undercutOf(
      { etchFactor: [[0, 0.8]], edgeDatum: 'shallow-edge', masking: 're-mask' },
      [6.5, 4, 2.5],
    );
    expect(allowance(undercut, { level: 6.5, depth: 0 })).toBeCloseTo(0.8 * 6.5, 12);
    expect(allowance(undercut, { level: 6.5, depth: 2.5 })).toBeCloseTo(0.8 * 4, 12);
    // Up to a depth inside a step the wall of that stage counts as far as it reaches there.
    expect(allowance(undercut, { level: 6.5, depth: 3 })).toBeCloseTo(
      0.8 * (2.5 + Math.sqrt(1.5 ** 2 - 0.5 ** 2)),
      12,
    );
    expect(cornerRadius(undercut, { level: 6.5, depth: 0 })).toBeCloseTo(0.8 * 2.5, 12);
    expect(cornerRadius(undercut, { level: 6.5, depth: 4 })).toBeCloseTo(0.8 * 2.5, 12);
  });

  test('with a table each stage keeps the factor of its own depth', () => {
    const etchFactor = [
      [1, 0.8],
      [3, 1.2],
    ] as const;
    const undercut = undercutOf({ etchFactor, edgeDatum: 'shallow-edge', masking: 're-mask' }, [1, 4]);
    expect(allowance(undercut, { level: 4, depth: 0 })).toBeCloseTo(0.8 * 1 + 1.2 * 3, 12);
  });

  test('every window is cut whole, on its own coat, and the sheet’s edge is not cut', {
    tags: ['long'],
  }, () => {
    fc.assert(
      fc.property(randomPart, fc.boolean(), anyDatum, (drawn, isTight, edgeDatum) => {
        const plan = planOf(drawn, edgeDatum, isTight ? TIGHT_SHEET : undefined, 're-mask');
        for (const { piece, opening, lines } of plan.stages) {
          expect(opening).toEqual(piece);
          const cut = lines.flatMap(({ spans }) => spans);
          const lies = (spans: readonly Span[], span: Span) =>
            spans.some((each) => distanceToSpan(each, pointAlong(span, 0.43)) < 1e-4);
          for (const span of piece.flat()) expect(lies(cut, span)).toBe(!lies(plan.sheet.flat(), span));
        }
      }),
      { numRuns: 60 },
    );
  });

  test.each(['shallow-edge', 'mid-wall', 'deep-foot'] as const)(
    'windows of random parts agree with buffers of an independent library (JSTS 2.12.1): %s',
    { tags: ['long'] },
    (edgeDatum) => {
      fc.assert(
        fc.property(randomPart, fc.boolean(), (drawn, isTight) => {
          const plan = planOf(drawn, edgeDatum, isTight ? TIGHT_SHEET : undefined, 're-mask');
          compareOpenings(plan, { etchFactor: plan.etchFactor, edgeDatum });
        }),
        { numRuns: Number(process.env['RUNS'] ?? (edgeDatum === 'shallow-edge' ? 60 : 20)) },
      );
    },
  );

  test('a plan kept in memory is opened again when the way of masking or the levels of the run change', () => {
    const memory = createClusterMemory();
    const asked = askedAt(nested.part, nested.depths);
    const plan = (masking: 'peel-next' | 're-mask', depths = asked) =>
      makePlan({ part: nested.part, asked: depths, job: plainJob({ masking }), memory });
    const areas = ({ stages }: EtchPlan) =>
      stages.map(({ opening }) => opening.reduce((sum, loop) => sum + loopArea(loop), 0));
    const before = areas(plan('re-mask'));
    expect(areas(plan('peel-next'))).not.toEqual(before);
    expect(areas(plan('re-mask'))).toEqual(before);
  });
});

describe('M4.7 both ways side by side', () => {
  const { maskings = [] } = nestedPlan();
  const [peelNext, reMask] = maskings;

  test('levels, minutes and deviations are the same; coats, lines and walls are not', () => {
    expect(peelNext).toMatchObject({
      masking: 'peel-next',
      stages: 3,
      coats: 1,
      minutes: 260,
      worstShare: 0,
    });
    expect(reMask).toMatchObject({ masking: 're-mask', stages: 3, coats: 3, minutes: 260, worstShare: 0 });
    // Published example, etches 2.5 / 1.5 / 2.5 at φ = 1: one coat 5.1235, 3.1225, 2.5 (rule published, numbers derived).
    const kept = (way: typeof peelNext) => way?.walls.map((wall) => Number(wall.allowance.toFixed(4)));
    expect(kept(peelNext)).toEqual([5.1235, 3.1225, 2.5]);
    expect(kept(reMask)).toEqual([2.5, 1.5, 2.5]);
    expect(peelNext?.walls.map(({ fillet }) => fillet)).toEqual([6.5, 4, 2.5]);
    expect(reMask?.walls.map(({ fillet }) => fillet)).toEqual([2.5, 1.5, 2.5]);
    expect(reMask?.walls.map(({ corner }) => corner)).toEqual([2.5, 1.5, 2.5]);
    expect([peelNext?.overhang, reMask?.overhang]).toEqual([2.5, 2.5]);
  });

  test('what is reported of the other way is what a plan of that way comes to', () => {
    const asked = askedAt(nested.part, nested.depths);
    const other = makePlan({ part: nested.part, asked, job: plainJob({ masking: 'peel-next' }) });
    expect(other.maskings).toEqual(maskings);
    expect(other.stages.reduce((sum, { minutes }) => sum + minutes, 0)).toBeCloseTo(reMask?.minutes ?? 0, 9);
  });

  test('one level leaves nothing to compare', () => {
    const bands = new Map([['R1', { low: 2, high: 2, minus: 0.1, plus: 0.1 }]]);
    const levels = Float64Array.from(nested.part.regionOfFace, (region) => (region < 0 ? -1 : 2));
    const process = plainJob().process;
    expect(
      compareMaskings({ sides: [{ arrangement: nested.part.arrangement, levels }], bands, process }),
    ).toEqual([]);
  });
});

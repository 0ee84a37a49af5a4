/** How far drawn edges may come out off their lines: worked by hand, and found on 20 000 fronts that know nothing of the sums. */

import { describe, expect, test } from 'vitest';
import { checkLines } from '#checks/check-lines.ts';
import { type LineBudget, lineBudgets } from '#checks/line-budget.ts';
import type { Loop } from '#geometry/span.ts';
import type { Job } from '#job/job.ts';
import { type PlainOpening, plainDepth } from '#oracle/plain-depth.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';
import { PROPERTY_SEED } from '#support/seeds/seed-of-run.ts';

interface Change {
  readonly process?: Partial<Job['process']>;
  readonly rules?: Partial<Job['rules']>;
}

/** Bays side by side from x = 0, each 20 mm wide and 60 long, the last one beside land; 0.02 mm/min. */
function bays(depths: readonly number[], change: Change = {}) {
  const outlines = depths.map((_, i) => rectangle(20 * i, 0, 20 * i + 20, 60));
  const part = partOf({ outlines });
  const plain = plainJob();
  const scribing = { cut: 0, template: undefined, laying: undefined, stretch: undefined };
  const still = { rate: 0.02, rateSpread: 0, timing: 0, factorSpread: 0, scribing };
  const job: Job = {
    ...plain,
    process: { ...plain.process, ...still, ...change.process },
    rules: { ...plain.rules, ...change.rules },
  };
  const asked = askedAt(
    part,
    depths.map((depth, i) => [20 * i + 10, 30, depth] as const),
  );
  const plan = makePlan({ part, asked, job });
  return { plan, job, budgets: lineBudgets(plan, job) };
}

function budgetAt(budgets: readonly LineBudget[], level: number, beside: number): LineBudget {
  const found = budgets.find((each) => each.level === level && each.beside === beside);
  if (found === undefined) throw new Error(`no edge of ${level} beside ${beside}`);
  return found;
}

const scribing = (more: Partial<Job['process']['scribing']>) => ({
  scribing: { cut: 0, template: undefined, laying: undefined, stretch: undefined, ...more },
});

describe('M6.5 worked by hand', () => {
  test('a factor of 1.0 ± 0.4 moves the line of a 2 mm pocket by 0.8 mm either way', () => {
    const { budgets } = bays([2], { process: { factorSpread: 0.4 } });
    const { byClock, amplification, allowance } = budgetAt(budgets, 2, 0);
    expect([allowance, amplification]).toEqual([2, expect.closeTo(1, 6)]);
    expect(byClock.parts).toEqual({ factor: expect.closeTo(0.8, 12) });
    for (const side of [byClock.outward, byClock.inward]) {
      expect(side.worst).toBeCloseTo(0.8, 12);
      expect(side.likely).toBeCloseTo(0.8, 12);
    }
  });

  test('φ ± 0.1, 2 mm beside land: ± 0.200; 3.1 beside 2.9: √(3.1² − 2.9²) · 0.1 = 0.1095', () => {
    const { budgets } = bays([3.1, 2.9, 2], { process: { factorSpread: 0.1 } });
    expect(budgetAt(budgets, 2, 0).byClock.outward.worst).toBeCloseTo(0.2, 12);
    expect(budgetAt(budgets, 3.1, 2.9).byClock.outward.worst).toBeCloseTo(0.1095445115, 9);
  });

  test('3.00 → 3.05 beside 2.90 moves the edge by 0.177 mm, 3.5 times the change; the amplification there is 3.9', () => {
    // One dip, 0.05 mm off: 2.5 min at 0.02 mm/min. Its own stage alone made the step.
    const { budgets } = bays([3, 2.9], { process: { timing: 2.5 } });
    const { parts, outward } = budgetAt(budgets, 3, 2.9).byClock;
    expect(parts.depth).toBeCloseTo(0.2269, 3);
    // √(3.05² − 2.9²) − √(3² − 2.9²); the later dip moves both floors and the edge by √(0.1 / 5.9) of its 0.05.
    const alone = Math.sqrt(3.05 ** 2 - 2.9 ** 2) - Math.sqrt(3 ** 2 - 2.9 ** 2);
    expect(alone).toBeCloseTo(0.177, 3);
    const both = Math.sqrt(3.1 ** 2 - 2.95 ** 2) - Math.sqrt(3 ** 2 - 2.9 ** 2);
    expect(outward.worst).toBeCloseTo(both, 9);
    expect(budgetAt(budgets, 3, 2.9).amplification).toBeCloseTo(3 / Math.sqrt(3 ** 2 - 2.9 ** 2), 4);
  });

  test('a rate off by 7 % in all stages moves the edge by 7 % of its allowance', () => {
    const { budgets } = bays([3, 2.2, 1], { process: { rateSpread: 0.07 } });
    for (const { byClock, allowance } of budgets) {
      expect(byClock.outward.worst).toBeCloseTo(0.07 * allowance, 9);
      expect(byClock.inward.worst).toBeCloseTo(0.07 * allowance, 9);
    }
  });

  test('later stages that deepen both floors alike move the edge by less than φ times as much: φ √(e / (ℓ + d))', () => {
    const { budgets } = bays([3, 2.2], { process: { timing: 0.5, etchFactor: [[0, 1.3]] } });
    const { parts } = budgetAt(budgets, 3, 2.2).byClock;
    expect(parts.floor).toBeCloseTo(1.3 * Math.sqrt(0.8 / 5.2) * 0.01, 4);
  });

  test('a slot of 1.5 mm and a blade of 0.5: ± 0.5; laid 0.3 off; a stretch of 0.1 % at 35 mm from the middle; each adds as it is', () => {
    const template = { slot: 1.5, blade: 0.5 };
    const { budgets } = bays([2], { process: scribing({ cut: 0.2, template, laying: 0.3, stretch: 0.001 }) });
    const { byClock, farthest } = budgetAt(budgets, 2, 0);
    expect(farthest).toBeCloseTo(Math.hypot(10, 30), 9);
    expect(byClock.parts).toEqual({
      scribing: expect.closeTo(0.2, 12),
      slot: expect.closeTo(0.5, 12),
      laying: expect.closeTo(0.3, 12),
      stretch: expect.closeTo(0.001 * farthest, 12),
    });
    expect(byClock.outward.worst).toBeCloseTo(1 + 0.001 * farthest, 12);
    expect(byClock.outward.likely).toBeCloseTo(Math.hypot(0.2, 0.5, 0.3, 0.001 * farthest), 9);
  });

  test('the foot of the wall on the drawn line: only the cut moves it', () => {
    const process = {
      edgeDatum: 'deep-foot',
      factorSpread: 0.3,
      rateSpread: 0.1,
      ...scribing({ cut: 0.17 }),
    } as const;
    const { byClock } = budgetAt(bays([3, 1.8], { process }).budgets, 3, 1.8);
    expect(byClock.outward.worst).toBeCloseTo(0.17, 9);
  });

  test('with re-mask each stage moves its edge by its own etch alone: 3.0 beside 2.9 by 0.1 · δφ', () => {
    const process = { masking: 're-mask', factorSpread: 0.4 } as const;
    const { budgets } = bays([3, 2.9], { process });
    expect(budgetAt(budgets, 3, 2.9).byClock.outward.worst).toBeCloseTo(0.04, 9);
    expect(budgetAt(budgets, 3, 2.9).amplification).toBeCloseTo(1, 6);
  });

  test('edges between strips of one taper, and of floors alike, are drawn by nobody', () => {
    expect(bays([2, 2]).budgets).toHaveLength(1);
  });
});

describe('M6.6 what helps', () => {
  test('the factor is worst: a coupon etched to that very depth, its window read to 0.02 mm', () => {
    const { budgets } = bays([2.4], { process: { factorSpread: 0.3 }, rules: { lineTolerance: 0.4 } });
    const { changes, sum } = budgetAt(budgets, 2.4, 0).remedy;
    expect(changes).toEqual(['coupon-at-depth']);
    // GUM: √2 · 0.02/√3 over twice the depth, and the depth's own 0.005/√3; times 1.96, times 2.4 mm.
    const u = Math.hypot((Math.SQRT2 * 0.02) / Math.sqrt(3) / 4.8, 0.005 / Math.sqrt(3) / 2.4);
    expect(sum.outward.worst).toBeCloseTo(1.96 * u * 2.4, 4);
  });

  test('a knife with play in its slot: a blade that fills it', () => {
    const process = scribing({ template: { slot: 2, blade: 0.6 } });
    const { budgets } = bays([1], { process, rules: { lineTolerance: 0.3 } });
    expect(budgetAt(budgets, 1, 0).remedy.changes).toEqual(['fill-slot']);
  });

  test('a small step at depth: a new coat for each stage, or levels further apart, help; another datum is named last', () => {
    const { budgets } = bays([3, 2.9], { process: { timing: 4 }, rules: { lineTolerance: 0.1 } });
    const { changes } = budgetAt(budgets, 3, 2.9).remedy;
    expect(changes[0]).toBe('re-mask');
    const tight = bays([3, 2.9], { process: { timing: 4 }, rules: { lineTolerance: 0.001 } });
    expect(budgetAt(tight.budgets, 3, 2.9).remedy.changes.at(-1)).toBe('edge-at-foot');
  });
});

describe('findings', () => {
  const found = (change: Change) => {
    const { budgets, plan, job } = bays([2], change);
    return checkLines(budgets, plan, job.process);
  };

  test('line-not-held: φ 1.0 ± 0.4 where the drawing allows 0.4', () => {
    const [finding, ...others] = found({ process: { factorSpread: 0.4 }, rules: { lineTolerance: 0.4 } });
    expect(others).toEqual([]);
    expect(finding).toMatchObject({
      code: 'line-not-held',
      severity: 'warn',
      facts: { level: 2, beside: 0, allowed: 0.4 },
    });
    expect(finding?.facts).toMatchObject({ likely: expect.closeTo(0.8, 9) });
  });

  test('line-needs-gauging: by the clock a rate off by 20 % moves it 0.4, gauged by a fifth of that', () => {
    const [finding] = found({ process: { rateSpread: 0.2 }, rules: { lineTolerance: 0.3 } });
    expect(finding).toMatchObject({ code: 'line-needs-gauging', severity: 'note' });
  });

  test('line-barely-held: root-sum-square within, everything at once not', () => {
    const process = { factorSpread: 0.1, ...scribing({ cut: 0.15 }) };
    const [finding] = found({ process, rules: { lineTolerance: 0.3 } });
    expect(finding).toMatchObject({ code: 'line-barely-held', facts: { worst: expect.closeTo(0.35, 9) } });
  });

  test('line-doubt: where nothing is asked a note says how far lines may be off', () => {
    const [finding, ...others] = found({ process: { factorSpread: 0.1, ...scribing({ cut: 0.15 }) } });
    expect(others).toEqual([]);
    expect(finding).toMatchObject({
      code: 'line-doubt',
      severity: 'note',
      facts: { worst: expect.closeTo(0.35, 9) },
    });
  });

  test('a plan without doubt of its lines has none of them', () => {
    expect(found({ rules: { lineTolerance: 0.1 } })).toEqual([]);
  });
});

/** Even numbers from −1 to 1: the multiplier and increment of Numerical Recipes' 32-bit generator, from memory. */
function sampler(): () => number {
  let state = PROPERTY_SEED >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state / 2 ** 32) * 2 - 1;
  };
}

interface Drawn {
  readonly factorBy: number;
  readonly rateBy: number;
  readonly dips: readonly number[];
  readonly cuts: readonly number[];
}

/** Deepest first: what each stage etched, with one rate that is off and a dip of its own. */
function etchesOf(plan: EtchPlan, { rateBy, dips }: Drawn): number[] {
  const deepest = [...plan.stages].sort((a, b) => b.level - a.level);
  return deepest.map(({ etch }, i) => etch * (1 + rateBy) + (dips[i] ?? 0));
}

function movedBy(loops: readonly Loop[], x: number): Loop[] {
  const shift = <Place extends { x: number; y: number }>(at: Place) => ({ x: at.x + x, y: at.y });
  return loops.map((loop) =>
    loop.map((span) => ({ ...span, start: shift(span.start), end: shift(span.end) })),
  );
}

/** Where, right of the drawn line, the real front passes the depth that the line stands for: by halving. */
function edgeOnFront(
  plan: EtchPlan,
  edge: { x: number; level: number; beside: number; share: number },
  drawn: Drawn,
): number {
  const stages = [...plan.stages].sort((a, b) => b.level - a.level);
  const etches = etchesOf(plan, drawn);
  const depthFrom = (index: number) => etches.slice(index).reduce((sum, each) => sum + each, 0);
  const isRemasked = plan.masking === 're-mask';
  const factor = (plan.etchFactor[0]?.[1] ?? 1) + drawn.factorBy;
  const openings = stages.map(
    ({ opening }, i): PlainOpening => ({
      loops: movedBy(opening, drawn.cuts[isRemasked ? i : 0] ?? 0),
      cut: isRemasked ? (etches[i] ?? 0) : depthFrom(i),
      base: isRemasked ? depthFrom(i + 1) : 0,
      factor,
    }),
  );
  const floorOf = (level: number) => depthFrom(stages.findIndex((each) => each.level === level));
  const beside = edge.beside === 0 ? 0 : floorOf(edge.beside);
  const sought = beside + edge.share * (floorOf(edge.level) - beside);
  // Just deeper than a floor that lies level there; just shallower than one that is the foot itself.
  const depth = edge.share === 1 ? sought - 1e-13 : sought + 1e-7;
  let [inside, outside] = [edge.x - 2, edge.x + 2];
  for (let i = 0; i < 27; i++) {
    const middle = (inside + outside) / 2;
    if (plainDepth(openings, { x: middle, y: 30 }) > depth) inside = middle;
    else outside = middle;
  }
  return (inside + outside) / 2 - edge.x;
}

describe('M6.5 found on 20 000 fronts, an independent solver', () => {
  const RUNS = 20_000;
  const doubt = { factorSpread: 0.08, rateSpread: 0.04, timing: 0.6, ...scribing({ cut: 0.12 }) };
  const cases: [string, Partial<Job['process']>, readonly number[], number][] = [
    ['three bays', {}, [3, 2.2, 1], 0],
    ['beside land', {}, [3, 2.2, 1], 2],
    ['3.0 beside 2.9', {}, [3, 2.9], 0],
    ['3.0 beside 2.9, the factor alone', { timing: 0, rateSpread: 0, ...scribing({}) }, [3, 2.9], 0],
    [
      '3.0 beside 2.9, its stage alone',
      { factorSpread: 0, rateSpread: 0, timing: 1.5, ...scribing({}) },
      [3, 2.9],
      0,
    ],
    ['middle of the wall', { edgeDatum: 'mid-wall' }, [3, 2.2, 1], 0],
    ['middle of a small wall', { edgeDatum: 'mid-wall' }, [3, 2.9], 0],
    ['foot of the wall', { edgeDatum: 'deep-foot' }, [3, 2.2, 1], 1],
    ['a factor of 1.7', { etchFactor: [[0, 1.7]] }, [2.6, 1.1], 0],
    ['re-mask', { masking: 're-mask' }, [3, 2.2, 1], 0],
    ['re-mask beside land', { masking: 're-mask' }, [3, 2.2, 1], 2],
    ['re-mask, 3.0 beside 2.9', { masking: 're-mask' }, [3, 2.9], 0],
    ['re-mask, middle of the wall', { masking: 're-mask', edgeDatum: 'mid-wall' }, [3, 2.2, 1], 0],
    ['re-mask, foot of the wall', { masking: 're-mask', edgeDatum: 'deep-foot' }, [3, 1.2], 0],
  ];

  test.each(cases)(
    '%s: root-sum-square within 5 %, worst never passed',
    { tags: ['long'] },
    (_, process, depths, at) => {
      const { plan, job, budgets } = bays(depths, { process: { ...doubt, ...process } });
      const [level, beside] = [depths[at] ?? 0, depths[at + 1] ?? 0];
      const { byClock } = budgetAt(budgets, level, beside);
      const share = { 'shallow-edge': 0, 'mid-wall': 0.5, 'deep-foot': 1 }[job.process.edgeDatum];
      const edge = { x: 20 * (at + 1), level, beside, share };
      const {
        factorSpread,
        rateSpread,
        rate,
        timing,
        scribing: { cut },
      } = job.process;
      const even = sampler();
      const draws = Array.from({ length: RUNS }, (_each, run) => {
        // Every 16th is thrown at the corners, where the worst lies.
        const throwOf = () => (run % 16 === 0 ? Math.sign(even()) : even());
        const dip = rate * (1 + rateSpread) * timing;
        return {
          isCorner: run % 16 === 0,
          off: edgeOnFront(plan, edge, {
            factorBy: factorSpread * throwOf(),
            rateBy: rateSpread * throwOf(),
            dips: plan.stages.map(() => dip * throwOf()),
            cuts: plan.stages.map(() => cut * throwOf()),
          }),
        };
      });
      const most = Math.max(...draws.map(({ off }) => off));
      const least = Math.min(...draws.map(({ off }) => off));
      expect(most).toBeLessThanOrEqual(byClock.outward.worst + 1e-6);
      expect(-least).toBeLessThanOrEqual(byClock.inward.worst + 1e-6);
      const within = draws.filter(({ isCorner }) => !isCorner).map(({ off }) => off);
      const mean = within.reduce((sum, each) => sum + each, 0) / within.length;
      const deviation = Math.sqrt(within.reduce((sum, each) => sum + (each - mean) ** 2, 0) / within.length);
      // Half-widths of even spreads are √3 standard deviations.
      expect(byClock.outward.likely / (Math.sqrt(3) * deviation)).toBeGreaterThan(0.95);
      expect(byClock.outward.likely / (Math.sqrt(3) * deviation)).toBeLessThan(1.05);
      // Nor is the worst out of all proportion: the corners come within a tenth of it.
      expect(most).toBeGreaterThan(0.9 * byClock.outward.worst);
    },
  );
});

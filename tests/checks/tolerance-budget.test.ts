/** What may go wrong with a floor: worked by hand, and sampled from the run itself by a sampler that knows nothing of the sums. */

import { describe, expect, test } from 'vitest';
import { overBy, type ToleranceBudget, toleranceBudgets } from '#checks/tolerance-budget.ts';
import type { Job } from '#part/job.ts';
import type { Asked } from '#part/part.ts';
import { makePlan } from '#plan/make-plan.ts';
import { partOf } from '#support/part-of.ts';
import { plainJob } from '#support/plain-job.ts';
import { PROPERTY_SEED } from '#support/seed-of-run.ts';
import { rectangle } from '#support/shapes.ts';

interface Change {
  readonly stock?: Partial<Job['stock']>;
  readonly process?: Partial<Job['process']>;
  readonly levels?: Job['levels'];
}

/** Pockets far apart in a sheet of 4 mm; 0.02 mm/min, ± 5 %, ± 0.5 min. */
function budgetsOf(floors: readonly Asked[], change: Change = {}): ToleranceBudget[] {
  const part = partOf({ outlines: floors.map((_, i) => rectangle(i * 100, 0, i * 100 + 60, 60)) });
  const plain = plainJob();
  const job: Job = {
    ...plain,
    stock: { ...plain.stock, thickness: 4, minus: 0.1, plus: 0.06, ...change.stock },
    process: { ...plain.process, rate: 0.02, rateSpread: 0.05, timing: 0.5, ...change.process },
    levels: change.levels ?? 'as-drawn',
  };
  const asked = new Map(
    floors.flatMap((each, i) => {
      const region = part.regions.find(({ label }) => label.x > i * 100 && label.x < i * 100 + 60);
      return region === undefined ? [] : [[region.id, each] as const];
    }),
  );
  expect(asked.size).toBe(floors.length);
  return toleranceBudgets(makePlan({ part, asked, job }), job);
}

function only(budgets: readonly ToleranceBudget[]): ToleranceBudget {
  const [budget] = budgets;
  if (budget === undefined || budgets.length > 1) throw new Error('there is one budget');
  return budget;
}

describe('M6.1, M6.2 run by the clock, worked by hand', () => {
  test('one floor of 2 mm: rate 2 × 5 % = 0.1; timing 0.021 mm/min × 0.5 min = 0.0105; sum 0.1105, root 0.10055', () => {
    const { byClock } = only(budgetsOf([{ depth: 2, plus: 0.12, minus: 0.12 }]));
    expect(byClock.parts).toMatchObject({ sheet: 0, rate: expect.closeTo(0.1, 12), gauge: 0 });
    expect(byClock.parts.timing).toBeCloseTo(0.0105, 12);
    for (const side of [byClock.tooDeep, byClock.tooShallow]) {
      expect(side).toMatchObject({ shift: 0, allowed: 0.12 });
      expect(side.worst).toBeCloseTo(0.1105, 9);
      expect(side.likely).toBeCloseTo(Math.sqrt(0.1 ** 2 + 0.0105 ** 2), 9);
    }
  });

  test('asked as a final thickness the sheet counts: + 0.06 − 0.1 is 0.08 either way of a middle 0.02 under nominal', () => {
    const { byClock } = only(budgetsOf([{ depth: 2, plus: 0.12, minus: 0.12, asThickness: true }]));
    expect(byClock.parts.sheet).toBeCloseTo(0.08, 12);
    expect(byClock.tooDeep.shift).toBeCloseTo(0.02, 12);
    expect(byClock.tooDeep.worst).toBeCloseTo(0.1 + 0.1105, 9);
    expect(byClock.tooShallow.worst).toBeCloseTo(0.06 + 0.1105, 9);
    expect(byClock.tooDeep.likely).toBeCloseTo(0.02 + Math.hypot(0.08, 0.1, 0.0105), 9);
    expect(byClock.tooShallow.likely).toBeCloseTo(-0.02 + Math.hypot(0.08, 0.1, 0.0105), 9);
  });

  test('a level that is off is a shift, and takes from one side what it gives the other', () => {
    const { byClock } = only(
      budgetsOf([{ depth: 2, plus: 0.2, minus: 0.2 }], { levels: [2.05], process: { timing: 0 } }),
    );
    expect(byClock.tooDeep.worst).toBeCloseTo(0.05 + 0.1025, 9);
    expect(byClock.tooShallow.worst).toBeCloseTo(-0.05 + 0.1025, 9);
  });

  test('the deepest floor is in the bath for every stage, and takes an error of timing from each', () => {
    const tolerance = { plus: 0.2, minus: 0.2 };
    const budgets = budgetsOf([3, 2, 1].map((depth) => ({ depth, ...tolerance })));
    expect(budgets.map(({ level }) => level)).toEqual([3, 2, 1]);
    const timing = budgets.map(({ byClock }) => byClock.parts.timing);
    for (const [index, each] of timing.entries()) expect(each).toBeCloseTo((3 - index) * 0.0105, 9);
    const likely = budgets[0]?.byClock.tooDeep.likely ?? 0;
    expect(likely).toBeCloseTo(Math.sqrt(0.15 ** 2 + 3 * 0.0105 ** 2), 9);
  });

  test('floors of one level and one tolerance are one budget, others are not', () => {
    const even = { plus: 0.1, minus: 0.1 };
    const budgets = budgetsOf([
      { depth: 2, ...even },
      { depth: 2, ...even },
      { depth: 2, plus: 0.1, minus: 0.05 },
      { depth: 2, ...even, asThickness: true },
    ]);
    expect(budgets.map(({ regions }) => regions.length).sort()).toEqual([1, 1, 2]);
  });
});

describe('M6.3 gauged on the way', () => {
  test('of a stage of 2 mm the last fifth drifts by 5 %: 0.02; three readings, 0.02 / √3 / 0.8 = 0.0144', () => {
    const { gauged } = only(budgetsOf([{ depth: 2, plus: 0.12, minus: 0.12 }]));
    expect(gauged.parts.rate).toBeCloseTo(0.02, 12);
    expect(gauged.parts.gauge).toBeCloseTo(0.025 / Math.sqrt(3), 9);
    expect(gauged.tooDeep.worst).toBeCloseTo(0.02 + 0.025 / Math.sqrt(3) + 0.0105, 9);
  });
});

describe('M6.4 what helps most', () => {
  const remedyOf = (asked: Partial<Asked>, change: Change = {}) =>
    only(budgetsOf([{ depth: 2, plus: 0.06, minus: 0.06, ...asked }], change)).remedy;

  test('a rate that drifts: gauge the run, which is enough', () => {
    const { changes, sum } = remedyOf({});
    expect(changes).toEqual(['gauge-run']);
    expect(overBy(sum, 'likely')).toBeLessThan(0);
  });

  test('a sheet of ± 0.2 under a final thickness: measure it; not where it is measured, nor where a depth is asked', () => {
    const stock = { minus: 0.2, plus: 0.2 };
    expect(remedyOf({ asThickness: true }, { stock }).changes[0]).toBe('measure-sheet');
    expect(remedyOf({ asThickness: true }, { stock: { ...stock, isMeasured: true } }).changes).not.toContain(
      'measure-sheet',
    );
    expect(remedyOf({}, { stock }).changes).not.toContain('measure-sheet');
  });

  test('a clock off by 5 min: time better; levels far off: take more of them', () => {
    const slow = { process: { timing: 5, rateSpread: 0.001 } };
    expect(remedyOf({}, slow).changes[0]).toBe('halve-timing');
    const off = { levels: [2.059], process: { timing: 0.1, rateSpread: 0.001 } };
    expect(remedyOf({}, off).changes[0]).toBe('finer-levels');
  });

  test('goes on until the floor is held, and never names a change that makes it worse', () => {
    const { changes, sum } = remedyOf({ asThickness: true, plus: 0.05, minus: 0.05 });
    expect(changes.length).toBeGreaterThan(1);
    expect(overBy(sum, 'likely')).toBeLessThanOrEqual(1e-6);
    const lost = remedyOf({ plus: 0.001, minus: 0.001 });
    expect(overBy(lost.sum, 'likely')).toBeGreaterThan(0);
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

interface Run {
  readonly etches: readonly number[];
  readonly floor: number;
  readonly rate: number;
  readonly spread: number;
  readonly timing: number;
}

/** Depth of a floor after a run by the clock: minutes that are off, at a rate that is off. */
function depthByClock({ etches, floor, rate, spread, timing }: Run, even: () => number): number {
  const trueRate = rate * (1 + spread * even());
  let depth = 0;
  etches.forEach((etch, stage) => {
    const minutes = etch / rate + timing * even();
    if (stage >= floor) depth += trueRate * minutes;
  });
  return depth;
}

/** The same gauged at four fifths of each stage: the minutes left come from the readings, the rate drifts meanwhile. */
function depthGauged({ etches, floor, rate, spread, timing }: Run, even: () => number): number {
  let depth = 0;
  etches.forEach((etch, stage) => {
    const before = rate * (1 + spread * even());
    const had = (0.8 * etch) / before;
    const etched = before * had;
    // Within two standard deviations of a gauge's 0.01 mm, three times.
    const read = etched + (0.02 / Math.sqrt(3)) * even();
    const left = (etch - read) / (read / had) + timing * even();
    if (stage >= floor) depth += etched + before * (1 + spread * even()) * left;
  });
  return depth;
}

describe('M6 sampled from 20 000 runs each, an independent solver', () => {
  const RUNS = 20_000;
  const run = { rate: 0.02, spread: 0.05, timing: 0.5 };
  const levels = [3, 2.2, 1];
  const etches = [0.8, 1.2, 1];

  const off = (asThickness: boolean, gauges: boolean) => {
    const budgets = budgetsOf(levels.map((depth) => ({ depth, plus: 0.1, minus: 0.1, asThickness })));
    return budgets.map((budget, floor) => {
      const even = sampler();
      const sum = gauges ? budget.gauged : budget.byClock;
      let held = 0;
      let most = 0;
      for (let i = 0; i < RUNS; i++) {
        const depth = (gauges ? depthGauged : depthByClock)({ ...run, etches, floor }, even);
        // From 4 − 0.1 to 4 + 0.06: what is too thin is as good as too deep.
        const sheet = asThickness ? -0.02 + 0.08 * even() : 0;
        const deep = depth - budget.level - sheet;
        most = Math.max(most, deep - sum.tooDeep.worst, -deep - sum.tooShallow.worst);
        if (deep <= sum.tooDeep.likely && -deep <= sum.tooShallow.likely) held++;
      }
      return { held: held / RUNS, most };
    });
  };

  test.each([
    ['depths, by the clock', false, false],
    ['final thicknesses, by the clock', true, false],
    ['depths, gauged', false, true],
    ['final thicknesses, gauged', true, true],
  ])(
    '%s: worst is never passed, and the root-sum-square holds nine in ten at least',
    (_, thickness, gauges) => {
      for (const { held, most } of off(thickness, gauges)) {
        // Gauged sums are to first order: drift times reading adds up to 0.001 mm a stage.
        expect(most).toBeLessThanOrEqual(gauges ? 1e-3 : 1e-12);
        expect(held).toBeGreaterThan(0.9);
      }
    },
  );

  test('the root-sum-square is no wide net either: a tenth less of it lets more than one in forty through', () => {
    const [budget] = budgetsOf([{ depth: 3, plus: 0.1, minus: 0.1, asThickness: true }]);
    const even = sampler();
    const limit = 0.9 * ((budget?.byClock.tooDeep.likely ?? 0) - 0.02);
    let passed = 0;
    for (let i = 0; i < RUNS; i++) {
      const depth = depthByClock({ ...run, etches: [3], floor: 0 }, even);
      if (Math.abs(depth - 3 - 0.08 * even()) > limit) passed++;
    }
    expect(passed / RUNS).toBeGreaterThan(0.025);
  });
});

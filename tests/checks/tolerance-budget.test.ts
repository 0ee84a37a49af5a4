/** What may go wrong with a floor: worked by hand, and sampled from the run itself by a sampler that knows nothing of the sums. */

import { describe, expect, test } from 'vitest';
import { overBy, type ToleranceBudget, toleranceBudgets, worseSide } from '#checks/tolerance-budget.ts';
import type { Asked } from '#part/part.ts';
import type { PlannedRegion } from '#plan/etch-plan.ts';
import { type BudgetedJob, planOfFloors } from '#support/parts/plan-of-floors.ts';
import { PROPERTY_SEED } from '#support/seeds/seed-of-run.ts';

function budgetsOf(floors: readonly Asked[], change: BudgetedJob = {}): ToleranceBudget[] {
  const { plan, job } = planOfFloors(floors, change);
  return toleranceBudgets(plan, job);
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

  test('with a new coat for each stage a floor is bare until its own stage only: one dip for the shallowest, three for the deepest', () => {
    const tolerance = { plus: 0.2, minus: 0.3 };
    const budgets = budgetsOf(
      [3.1, 2, 0.7].map((depth) => ({ depth, ...tolerance })),
      { masking: 're-mask' },
    );
    const timing = new Map(budgets.map(({ level, byClock }) => [level, byClock.parts.timing]));
    expect(timing.get(0.7)).toBeCloseTo(0.0105, 9);
    expect(timing.get(2)).toBeCloseTo(2 * 0.0105, 9);
    expect(timing.get(3.1)).toBeCloseTo(3 * 0.0105, 9);
  });

  test('a taper’s strips on one level are judged by the least and the greatest depth of all of them', () => {
    const floor = { depth: 2, plus: 0.3, minus: 0.3 };
    const { plan, job } = planOfFloors([floor, floor]);
    const strips = [
      { low: 1.9, high: 2.02 },
      { low: 1.95, high: 2.08 },
    ];
    const regions = plan.regions.map((region, i): PlannedRegion => {
      const strip = strips[i];
      return strip === undefined
        ? region
        : { ...region, taper: { tapers: [], plus: 0.2, minus: 0.1, ...strip } };
    });
    for (const order of [regions, regions.toReversed()]) {
      const { asked, byClock, regions: ids } = only(toleranceBudgets({ ...plan, regions: order }, job));
      expect(ids).toHaveLength(2);
      expect([asked.low, asked.high]).toEqual([1.9, 2.08]);
      expect(byClock.tooDeep).toMatchObject({ shift: expect.closeTo(0.1, 9), allowed: 0.2 });
      expect(byClock.tooShallow).toMatchObject({ shift: expect.closeTo(0.08, 9), allowed: 0.1 });
    }
  });

  test('the worse side is the one with less left of what is allowed there', () => {
    const even = { depth: 2, plus: 0.2, minus: 0.2 };
    const sideAt = (level: number, asked: Asked = even) =>
      worseSide(only(budgetsOf([asked], { levels: [level] })).byClock);
    expect(sideAt(2.04)).toBe('tooDeep');
    expect(sideAt(1.97)).toBe('tooShallow');
    // 0.03 nearer to the one side, but 0.05 more allowed there.
    expect(sideAt(1.97, { ...even, minus: 0.27 })).toBe('tooDeep');
    expect(sideAt(2.03, { ...even, plus: 0.27 })).toBe('tooShallow');
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
    expect(gauged.tooDeep.likely).toBeCloseTo(Math.hypot(0.02, 0.025 / Math.sqrt(3), 0.0105), 9);
  });

  test('at worst, by hand: 1.4371 mm at least when it is read, 0.0289 off, and 0.6083 to go at a rate 5 % off', () => {
    const { gauged } = only(budgetsOf([{ depth: 2, plus: 0.12, minus: 0.12 }]));
    // 0.8 · 2 · 0.95 / 1.05 − 0.0105 = 1.43712; 5 · 0.01 / √3 = 0.02887, so 1.40825 read.
    // Carried on (2 · 0.02887 + 0.59175 · 0.0105) / 1.40825 = 0.04541; drift 0.05 · 0.59175 · 1.44762 / 1.40825 = 0.03041;
    // the last dip 0.0105 · 1.05 = 0.01103.
    for (const { worst } of [gauged.tooDeep, gauged.tooShallow]) expect(worst).toBeCloseTo(0.08685, 5);
  });

  test('a stage so thin that its reading says nothing runs by the clock: 0.06 mm, 5 % of it and the timing', () => {
    const { gauged, byClock } = only(budgetsOf([{ depth: 0.06, plus: 0.12, minus: 0.12 }]));
    expect(gauged.tooDeep.worst).toBeCloseTo(0.06 * 0.05 + 0.0105, 9);
    expect(gauged.tooDeep.worst).toBeCloseTo(byClock.tooDeep.worst, 9);
  });

  test('a rate that may be half as fast again has more etched at four fifths of the minutes than was asked', () => {
    const wide = { process: { rateSpread: 0.4, timing: 0 } };
    const { gauged } = only(budgetsOf([{ depth: 2, plus: 0.12, minus: 0.12 }], wide));
    // 0.8 · 2 · 1.4 / 0.6 = 3.7333 of 2.
    expect(gauged.tooDeep.worst).toBeCloseTo(1.7333, 4);
  });

  test('that wide a spread and a clock off by half a minute: both dips add what they are off at the fastest rate', () => {
    const wide = { process: { rateSpread: 0.4, timing: 0.5 } };
    const { gauged } = only(budgetsOf([{ depth: 2, plus: 0.12, minus: 0.12 }], wide));
    // 0.02 · 1.4 · 0.5 = 0.014; 3.7333 + 0.014 − 2, and 0.014 · 1.4 for the last dip.
    expect(gauged.tooDeep.worst).toBeCloseTo(1.73333 + 0.014 + 0.0196, 5);
  });

  test('a sheet as bought is off by its tolerance and no more, though a gauge would read it worse', () => {
    const stock = { minus: 0.03, plus: 0.02 };
    const { byClock } = only(
      budgetsOf([{ depth: 2, plus: 0.12, minus: 0.12, asThickness: true }], { stock }),
    );
    expect(byClock.tooDeep.worst).toBeCloseTo(0.005 + 0.025 + 0.1105, 9);
    expect(byClock.tooShallow.worst).toBeCloseTo(-0.005 + 0.025 + 0.1105, 9);
  });

  test('a measured sheet is as sure as its readings: half of 0.02 mm either way, at worst five standard deviations', () => {
    const stock = { minus: 0.015, plus: 0.025, isMeasured: true };
    const { byClock } = only(
      budgetsOf([{ depth: 2, plus: 0.12, minus: 0.12, asThickness: true }], { stock }),
    );
    expect(byClock.parts.sheet).toBeCloseTo(0.02, 12);
    expect(byClock.tooDeep.worst).toBeCloseTo(-0.005 + 0.05 + 0.1105, 9);
  });
});

describe('M6.4 what helps most', () => {
  const remedyOf = (asked: Partial<Asked>, change: BudgetedJob = {}) =>
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

  test('barely-held: where only the worst case is not held, what helps the worst case most', () => {
    // Root-sum-square 0.10055 of 0.105, at worst 0.1105. Gauged 0.0869 at worst; half the spread 0.05 + 0.01025 = 0.06025.
    const { changes, sum } = remedyOf({ plus: 0.105, minus: 0.105 });
    expect(changes).toEqual(['halve-spread']);
    expect(sum.tooDeep.worst).toBeCloseTo(0.06025, 9);
  });

  test('gauged, and then twice as many levels: half as far off, each stage half as deep, and twice as many readings', () => {
    // 0.05 off: gauged 0.05 + 0.0247; twice the levels 0.025 + √(2 · (0.01025² + 0.01443² + 0.0021²)), of 0.055.
    const off = { levels: [2.05], process: { timing: 0.1 } };
    const { changes, sum } = remedyOf({ plus: 0.055, minus: 0.21 }, off);
    expect(changes).toEqual(['gauge-run', 'finer-levels']);
    expect(sum.tooDeep.shift).toBeCloseTo(0.025, 9);
    expect(sum.tooShallow.shift).toBeCloseTo(-0.025, 9);
    expect(sum.parts.rate).toBeCloseTo(2 * 1.025 * 0.2 * 0.05, 9);
    expect(sum.parts.gauge).toBeCloseTo(2 * (0.025 / Math.sqrt(3)), 9);
    expect(sum.parts.timing).toBeCloseTo(2 * 0.0021, 9);
  });

  test('a floor that is held even at worst: what helps the root-sum-square most, as for one that is not', () => {
    // Gauged 0.027 by root-sum-square and 0.0869 at worst; with half the spread 0.051 and 0.0603.
    expect(remedyOf({ plus: 0.21, minus: 0.2 }).changes).toEqual(['gauge-run']);
  });

  test('a change that gains less than half a micrometre is not worth naming', () => {
    // No clock to time better, a sheet that does not count, and levels that are as asked: nothing else helps.
    const { changes } = remedyOf({ plus: 0.001, minus: 0.002 }, { process: { timing: 0.001 } });
    expect(changes).toEqual(['gauge-run', 'halve-spread']);
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

/** A normal number: Box and Muller's transform (Annals of Mathematical Statistics 29 (1958) 610–611, from memory). */
function normal(even: () => number): number {
  const [u, v] = [(even() + 1) / 2, (even() + 1) / 2];
  return Math.sqrt(-2 * Math.log(1 - u)) * Math.cos(2 * Math.PI * v);
}

/** Three readings of a gauge with a normal noise of 0.01 mm, read to 0.01 mm: their mean. */
function gaugedMean(depth: number, even: () => number): number {
  const readings = [0, 1, 2].map(() => Math.round((depth + 0.01 * normal(even)) * 100) / 100);
  return readings.reduce((sum, each) => sum + each, 0) / 3;
}

/**
 * The same gauged at four fifths of each stage: what the rate was and the minutes left come from the readings, with a noise that knows
 * no limit; the rate drifts meanwhile; both dips are timed. Minutes of later stages are by the rate last read.
 */
function depthGauged({ etches, floor, rate, spread, timing }: Run, even: () => number): number {
  let depth = 0;
  let known = rate;
  etches.forEach((etch, stage) => {
    const before = rate * (1 + spread * even());
    const had = (0.8 * etch) / known;
    const etched = before * (had + timing * even());
    const read = gaugedMean(etched, even);
    known = read / had;
    const left = Math.max(0, (etch - read) / known + timing * even());
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
    { tags: ['long'] },
    (_, thickness, gauges) => {
      for (const { held, most } of off(thickness, gauges)) {
        expect(most).toBeLessThanOrEqual(1e-12);
        expect(held).toBeGreaterThan(0.9);
      }
    },
  );

  test.each([
    { spread: 0, timing: 0, levels: [1.7] },
    { spread: 0, timing: 0, levels: [3, 2.2, 1] },
    { spread: 0.02, timing: 0, levels: [2.9, 0.6] },
    { spread: 0.05, timing: 0.25, levels: [4.1, 3.3, 2.6, 1.2, 0.5] },
    { spread: 0.12, timing: 1.5, levels: [2.4, 0.7] },
    { spread: 0.2, timing: 0.1, levels: [3.1] },
    { spread: 0.3, timing: 0.3, levels: [2.8, 0.9] },
  ])(
    'noisy-gauge: with a spread of $spread, $timing min and levels of $levels no gauged run passes its worst',
    { tags: ['long'] },
    ({ spread, timing, levels: deep }) => {
      const given = { process: { rateSpread: spread, timing } };
      const budgets = budgetsOf(
        deep.map((depth) => ({ depth, plus: 0.3, minus: 0.2 })),
        given,
      );
      const stages = deep.map((level, i) => level - (deep[i + 1] ?? 0));
      for (const [floor, { gauged, level }] of budgets.entries()) {
        const even = sampler();
        let most = 0;
        for (let i = 0; i < RUNS; i++) {
          const off = depthGauged({ rate: 0.02, spread, timing, etches: stages, floor }, even) - level;
          most = Math.max(most, off - gauged.tooDeep.worst, -off - gauged.tooShallow.worst);
        }
        expect(most).toBeLessThanOrEqual(1e-12);
        // Nor is it a figure out of all proportion.
        expect(gauged.tooDeep.worst).toBeGreaterThan(gauged.tooDeep.likely);
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

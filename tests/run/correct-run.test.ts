/** A run corrected by its readings (M7): by hand where that can be done, and 200 simulated runs. */
import { describe, expect, test } from 'vitest';
import { studentFactor } from '#bath/student-factor.ts';
import { toleranceBudgets } from '#checks/tolerance-budget.ts';
import { makePlan } from '#plan/make-plan.ts';
import type { Reading } from '#run/correct-fit.ts';
import { depthsLeft } from '#run/correct-minutes.ts';
import type { RunPlan } from '#run/correct-plan.ts';
import { correctRates, peelMinutes } from '#run/correct-rates.ts';
import { partOf } from '#support/part-of.ts';
import { plainJob } from '#support/plain-job.ts';
import { rectangle } from '#support/shapes.ts';

const RATE = 0.025;
/** A gauge-pod cover of three floors, ± 0.05 mm. */
const LEVELS = [3, 2.2, 1];
const plan: RunPlan = {
  stages: LEVELS.map((level, index) => ({
    number: index + 1,
    level,
    minutes: (level - (LEVELS[index + 1] ?? 0)) / RATE,
  })),
  regions: LEVELS.map((level, index) => ({
    id: `R0${index + 1}`,
    level,
    asked: { depth: level, plus: 0.05, minus: 0.05 },
  })),
  rate: RATE,
  rateSpread: 0.05,
  sheet: { thickness: 5, minus: 0.2, plus: 0.2 },
};

function reading(stage: number, minute: number, value: number, special: Partial<Reading> = {}): Reading {
  return { stage, minute, peeled: 0, region: 'R01', kind: 'depth', value, ...special };
}

describe('M7 a reading after stage 1', () => {
  test('of 0.720 mm in 24 min shows 0.030 mm/min, and shortens every later stage by 0.025 / 0.030', () => {
    // By hand: rate = depth / minutes; stage 1 has 0.080 mm to go, stage 2 asks 1.2 mm, stage 3 1.0 mm.
    const had = [24, 0, 0];
    const { rate, stages } = correctRates(plan, [reading(0, 24, 0.72)], { had, current: 0 });
    expect(rate.value).toBeCloseTo(0.03, 6);
    expect(stages.map(({ left }) => left.value)).toEqual([
      expect.closeTo(0.08 / 0.03, 4),
      expect.closeTo(1.2 / 0.03, 3),
      expect.closeTo(1 / 0.03, 3),
    ]);
    // One reading with 0.010 mm of gauge noise: 1.96 × 0.010 / 24.
    expect(rate.within).toBeCloseTo((1.96 * 0.01) / 24, 6);
  });

  test('of thickness, with the sheet gauged before, shows the same', () => {
    const readings = [
      reading(-1, 0, 5.13, { kind: 'thickness' }),
      reading(0, 24, 5.13 - 0.72, { kind: 'thickness' }),
    ];
    const { rate, regions } = correctRates(plan, readings, { had: [24, 0, 0], current: 0 });
    // The sheet's ± 0.2 mm still has a say beside a gauge of 0.010 mm: by less than 0.1 %.
    expect(rate.value).toBeCloseTo(0.03, 4);
    expect(regions[0]?.thickness?.value).toBeCloseTo(2.13, 2);
  });

  test('of thickness alone leaves the rate as unsure as the sheet', () => {
    const thin = [reading(0, 24, 5 - 0.72, { kind: 'thickness' })];
    const { rate } = correctRates(plan, thin, { had: [24, 0, 0], current: 0 });
    // Rectangular ± 0.2 mm: GUM 4.3.7, 0.2 / √3.
    expect(rate.within).toBeCloseTo((1.96 * Math.hypot(0.01, 0.2 / Math.sqrt(3))) / 24, 5);
  });

  test('four repeats are worth their mean, with Student’s t for three degrees of freedom', () => {
    const values = [0.71, 0.73, 0.72, 0.72];
    const { rate } = correctRates(
      plan,
      values.map((value) => reading(0, 24, value)),
      { had: [24, 0, 0], current: 0 },
    );
    const deviation = Math.sqrt(0.0002 / 3 + 0.01 ** 2 / 12);
    expect(rate.value).toBeCloseTo(0.03, 6);
    expect(rate.within).toBeCloseTo((3.18 * deviation) / 2 / 24, 6);
  });

  test('a floor that is too deep for good is given up where more regions would be lost with it', () => {
    const twin = {
      ...plan,
      regions: [...plan.regions, { ...plan.regions[1], id: 'R04' } as RunPlan['regions'][0]],
    };
    const { regions } = correctRates(twin, [reading(0, 32, 1.2)], { had: [32, 0, 0], current: 0 });
    expect(regions.map(({ verdict }) => verdict === 'out of reach')).toEqual([true, false, false, false]);
    expect(regions[1]?.depth.value).toBeCloseTo(2.2, 4);
  });

  test('of one against one the shallower depth is kept: too thick can still be saved', () => {
    const { regions } = correctRates(plan, [reading(0, 32, 1.2)], { had: [32, 0, 0], current: 0 });
    expect(regions.map(({ verdict }) => verdict === 'out of reach')).toEqual([false, true, false]);
  });
});

describe('M7 minutes left', () => {
  test('share a deviation evenly where a floor is a little too deep', () => {
    // The open floor wants 2.16 more, the next stage 2.20: neither can have both, so each is off by 0.02.
    const asks = [2.16, 2.2].map((aim) => [{ low: aim - 0.05, aim, high: aim + 0.05 }]);
    expect(depthsLeft(asks)).toEqual([expect.closeTo(2.18, 9), expect.closeTo(2.18, 9)]);
  });
  test('never ask an earlier stage for less than nothing', () => {
    const asks = [-0.2, 0.5, 0.4].map((aim) => [{ low: aim - 0.05, aim, high: aim + 0.05 }]);
    const left = depthsLeft(asks);
    for (const [index, depth] of left.entries()) expect(depth).toBeGreaterThanOrEqual(left[index + 1] ?? 0);
  });
  test('Student’s t is that of the GUM, table G.2', () => {
    expect([1, 2, 11, 1000].map(studentFactor)).toEqual([12.71, 4.3, 2.23, 1.984]);
  });
});

/** A small generator (mulberry32): the same 200 runs each time. */
function randomFrom(seed: number): () => number {
  let state = seed * 2654435769;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** One run: rate off by up to 15 %, drifting by up to 5 % more to its end. What comes out, with and without corrections. */
function simulate(seed: number): {
  readonly corrected: boolean;
  readonly blind: boolean;
  /** By floor: how far the corrected run is off, mm. */
  readonly off: readonly number[];
} {
  const random = randomFrom(seed);
  const bias = 1 + 0.15 * (2 * random() - 1);
  const drift = 0.05 * (2 * random() - 1);
  const whole = 3 / RATE;
  const removedAt = (minute: number) => RATE * (bias * minute + (drift * minute * minute) / (2 * whole));
  const noisy = (depth: number) => {
    const normal = Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    return Math.round((depth + 0.01 * normal) * 100) / 100;
  };
  const deviations = (had: readonly number[]) => {
    const peeled = peelMinutes(had);
    const end = removedAt(peeled.at(-1) ?? 0);
    return LEVELS.map((level, index) => Math.abs(end - removedAt(peeled[index] ?? 0) - level));
  };
  const inside = (had: readonly number[]) => deviations(had).every((each) => each <= 0.05);
  const readings: Reading[] = [];
  const had = [0, 0, 0];
  const measure = (current: number) => {
    const peeled = peelMinutes(had);
    const minute = peeled[3] ?? 0;
    for (let index = 0; index <= current; index++) {
      const from = peeled[index] ?? 0;
      for (let repeat = 0; repeat < 3; repeat++) {
        const value = noisy(removedAt(minute) - removedAt(from));
        readings.push(reading(current, minute, value, { peeled: from, region: `R0${index + 1}` }));
      }
    }
  };
  for (let current = 0; current < 3; current++) {
    // Out at four fifths of the minutes, gauged, in for the rest, gauged again; once more where it says so.
    had[current] = 0.8 * (correctRates(plan, readings, { had, current }).stages[current]?.left.value ?? 0);
    for (let dip = 0; dip < 2; dip++) {
      measure(current);
      had[current] =
        (had[current] ?? 0) +
        (correctRates(plan, readings, { had, current }).stages[current]?.left.value ?? 0);
    }
  }
  const blind = inside(plan.stages.map(({ minutes }) => minutes));
  return { corrected: inside(had), blind, off: deviations(had) };
}

test('M7 200 simulated runs: nearly all inside tolerance with corrections, few without', () => {
  const runs = Array.from({ length: 200 }, (_, seed) => simulate(seed + 1));
  const share = (key: 'corrected' | 'blind') => runs.filter((run) => run[key]).length / runs.length;
  expect(share('corrected')).toBeGreaterThanOrEqual(0.99);
  expect(share('blind')).toBeCloseTo(0.105, 9);
});

test('M6.3 the same runs keep every floor within what the budget of a gauged run says', () => {
  const part = partOf({ outlines: LEVELS.map((_, i) => rectangle(100 * i, 0, 100 * i + 60, 60)) });
  const asked = new Map(
    part.regions.map(({ id }, i) => [id, { depth: LEVELS[i] ?? 0, plus: 0.05, minus: 0.05 }]),
  );
  // The simulated run keeps its minutes.
  const process = { ...plainJob().process, rate: RATE, rateSpread: plan.rateSpread, timing: 0 };
  const job = { ...plainJob(), process };
  const budgets = toleranceBudgets(makePlan({ part, asked, job }), job);
  expect(budgets.map(({ level }) => level)).toEqual(LEVELS);
  const runs = Array.from({ length: 200 }, (_, seed) => simulate(seed + 1));
  for (const [floor, { gauged }] of budgets.entries()) {
    const held = (limit: number) => runs.filter(({ off }) => (off[floor] ?? 1) <= limit).length / runs.length;
    expect(held(gauged.tooDeep.likely)).toBeGreaterThan(0.9);
    expect(held(gauged.tooDeep.worst)).toBe(1);
    // Nor does it promise too little: what it says is not three times what comes out.
    expect(held(gauged.tooDeep.likely / 3)).toBeLessThan(0.95);
  }
});

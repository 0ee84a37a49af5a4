/** A run corrected by its readings (M7), by hand where that can be done. Whole runs: simulated-runs.test.ts. */
import { describe, expect, test } from 'vitest';
import { coverageFactor } from '#bath/coverage-factor.ts';
import type { Reading } from '#run/correct-fit.ts';
import { depthsLeft } from '#run/correct-minutes.ts';
import type { RunPlan } from '#run/correct-plan.ts';
import { correctRates } from '#run/correct-rates.ts';
import { threeFloors } from '#support/jobs/simulated-run.ts';

/** Floors of 3.0, 2.2 and 1.0 mm, planned at 0.025 mm/min. */
const plan = threeFloors('peel-next');
const remasked = threeFloors('re-mask');

function reading(stage: number, minute: number, value: number, special: Partial<Reading> = {}): Reading {
  return { stage, bare: { from: 0, to: minute }, region: 'R01', kind: 'depth', value, ...special };
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

  describe('an uncertainty wider than its figure says why', () => {
    const had = (minutes: number) => ({ had: [minutes, 0, 0], current: 0 });
    const left = (minute: number, value: number) => reading(0, minute, value, { kind: 'thickness' });

    test('the sheet, where a thickness was read beside no gauging of it', () => {
      // ± 0.2 mm of sheet on 0.1 mm of metal.
      expect(correctRates(plan, [left(4, 4.9), left(4, 4.91)], had(4)).wide).toBe('sheet');
      const sheet = reading(-1, 0, 5.02, { kind: 'thickness' });
      expect(correctRates(plan, [sheet, left(4, 4.92), left(4, 4.91)], had(4)).wide).toBeUndefined();
    });

    test('readings that disagree, and too few of them', () => {
      const apart = [0.05, 0.62, 0.33, 0.91, 0.12].map((value) => reading(0, 12, value));
      expect(correctRates(plan, apart, had(12)).wide).toBe('spread');
      expect(correctRates(plan, [reading(0, 0.3, 0.008)], had(0.3)).wide).toBe('few');
      expect(correctRates(plan, [reading(0, 24, 0.61)], had(24)).wide).toBeUndefined();
    });
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

describe('M7.1 reading more often never makes a rate less sure', () => {
  const minutesBetween = (from: number, to: number, count: number) =>
    Array.from({ length: count }, (_, i) => to - ((count - 1 - i) * (to - from)) / count);
  const sureBy = (minutes: readonly number[]) => {
    const readings = minutes.map((minute) => reading(0, minute, 0.025 * minute));
    return correctRates(plan, readings, { had: [Math.max(...minutes), 0, 0], current: 0 });
  };
  test('300 readings within 1.5 min give the next rate as surely as few', () => {
    const one = sureBy([25.5]);
    const many = sureBy(minutesBetween(24, 25.5, 300));
    expect(one.next.within).toBeLessThan(0.0017);
    expect(many.next.within).toBeLessThan(one.next.within);
    expect(many.rate.within).toBeLessThan(one.rate.within);
    expect(many.next.value).toBeCloseTo(0.025, 6);
  });
  test.each([0, 12, 20])(
    'from minute %d to 24: 2, 4, 8, … 64 moments, each as sure as half as many',
    (from) => {
      const within = [1, 2, 4, 8, 16, 32, 64].map(
        (count) => sureBy(minutesBetween(from, 24, count)).next.within,
      );
      for (const [index, each] of within.entries()) {
        expect(each).toBeLessThan((within[index - 1] ?? 1) + 1e-9);
      }
    },
  );
});

describe('M7.2 readings that contradict each other', () => {
  test('0.5 and 1.5 mm at one moment leave the rate as open as they are, by their own scatter', () => {
    const torn = [reading(0, 24, 0.5), reading(0, 24, 1.5)];
    const { rate, off, noise, regions } = correctRates(plan, torn, { had: [24, 0, 0], current: 0 });
    // Scatter of two: 1 / √2; of their mean 0.5; Student's t of one degree of freedom 12.71 (GUM table G.2).
    expect(rate.value).toBeCloseTo(1 / 24, 4);
    expect(rate.within * 24).toBeGreaterThan(0.95 * 12.71 * 0.5);
    expect(rate.within * 24).toBeLessThan(1.05 * 12.71 * 0.5);
    // Both are still reported as standing apart from what a gauge scatters.
    expect(off.map((each) => Math.abs(each) * noise)).toEqual(
      [0.5, 0.5].map((each) => expect.closeTo(each, 2)),
    );
    expect(regions.every(({ verdict }) => verdict !== 'met')).toBe(true);
  });

  test('of two floors that were bare alike they are worth no more', () => {
    const torn = [reading(0, 32, 0.6), reading(0, 32, 1.2, { region: 'R03' })];
    const { rate } = correctRates(remasked, torn, { had: [32, 0, 0], current: 0 });
    expect(rate.within * 32).toBeGreaterThan(0.6 / 2);
  });

  test('readings that differ by what a gauge scatters change nothing', () => {
    const pair = [reading(0, 24, 0.715), reading(0, 24, 0.725)];
    const { rate } = correctRates(plan, pair, { had: [24, 0, 0], current: 0 });
    expect(rate.within).toBeCloseTo((1.96 * 0.01) / Math.SQRT2 / 24, 5);
  });
});

describe('M7 before the first dip', () => {
  test.each([
    { way: plan, minutes: [0.8, 1.2, 1] },
    { way: remasked, minutes: [1, 1.2, 0.8] },
  ])('a sheet gauged changes no minutes: $way.masking', ({ way, minutes }) => {
    const gauged = [reading(-1, 0, 5.13, { kind: 'thickness' })];
    const { stages } = correctRates(way, gauged, { had: [0, 0, 0], current: -1 });
    expect(stages.map(({ left }) => left.value)).toEqual(minutes.map((mm) => expect.closeTo(mm / 0.025, 6)));
  });
});

describe('M7.3 where a final thickness is asked', () => {
  test('a sheet gauged 0.10 mm thicker is etched 0.10 mm deeper, and the thickness comes out', () => {
    const asThickness = { ...plan, regions: plan.regions.map((each) => ({ ...each, asThickness: true })) };
    const gauged = ['R01', 'R02', 'R03'].flatMap((region) =>
      Array.from({ length: 20 }, () => reading(-1, 0, 5.1, { kind: 'thickness', region })),
    );
    const { stages, regions } = correctRates(asThickness, gauged, { had: [0, 0, 0], current: -1 });
    // Only the last stage is longer: 1.1 mm in place of 1.0; the sheet's ± 0.2 mm holds back 0.0001 mm.
    expect(stages.map(({ left }) => left.value * 0.025)).toEqual(
      [0.8, 1.2, 1.1].map((etch) => expect.closeTo(etch, 2)),
    );
    expect(regions.map(({ thickness }) => thickness?.value)).toEqual(
      [2, 2.8, 4].map((left) => expect.closeTo(left, 3)),
    );
    const untold = correctRates(plan, gauged, { had: [0, 0, 0], current: -1 });
    expect(untold.regions[0]?.depth.value).toBeCloseTo(3, 6);
  });
});

describe('M7 with a new coat for each stage', () => {
  test('of 0.960 mm in 32 min of stage 1 shows 0.030 mm/min: 0.040, 1.2 and 0.8 mm are still to go', () => {
    const { rate, stages } = correctRates(remasked, [reading(0, 32, 0.96)], { had: [32, 0, 0], current: 0 });
    expect(rate.value).toBeCloseTo(0.03, 6);
    expect(stages.map(({ left }) => left.value)).toEqual([
      expect.closeTo(0.04 / 0.03, 4),
      expect.closeTo(1.2 / 0.03, 3),
      expect.closeTo(0.8 / 0.03, 3),
    ]);
  });

  test('a floor coated over stays as it is, and the stage after makes good what the deeper floors lack', () => {
    // Stage 1 went 0.06 mm too deep and is over; stage 2 has just been peeled.
    const readings = [reading(0, 40, 1.06), reading(0, 40, 1.06, { region: 'R02' })];
    const { regions, stages } = correctRates(remasked, readings, { had: [40, 0, 0], current: 1 });
    const [first, second, third] = regions;
    expect(first?.depth.value).toBeCloseTo(1.06, 6);
    expect(first?.verdict).toBe('out of reach');
    // 2.2 − 1.06 mm at 0.0265 mm/min.
    expect(stages.map(({ left }) => left.value)).toEqual([
      0,
      expect.closeTo(1.14 / 0.0265, 3),
      expect.closeTo(0.8 / 0.0265, 3),
    ]);
    expect([second?.depth.value, third?.depth.value]).toEqual([expect.closeTo(2.2, 6), expect.closeTo(3, 6)]);
    // Only gauges make it unsure: two readings of 0.010 mm, 1.96 / √2.
    expect(first?.depth.within).toBeCloseTo((1.96 * 0.01) / Math.SQRT2, 4);
  });

  test('a floor gauged again under a later stage counts for its own stage alone', () => {
    const late = reading(1, 40, 1.02, { stage: 1 });
    const { stages } = correctRates(remasked, [late], { had: [40, 20, 0], current: 1 });
    expect(stages[0]?.rate?.value).toBeCloseTo(1.02 / 40, 6);
  });

  test('the deeper floors, etched along, give the same rate', () => {
    const deep = [reading(0, 32, 0.96, { region: 'R03' })];
    const { rate } = correctRates(remasked, deep, { had: [32, 0, 0], current: 0 });
    expect(rate.value).toBeCloseTo(0.03, 6);
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
    expect([1, 2, 11, 1000].map(coverageFactor)).toEqual([12.71, 4.3, 2.23, 1.984]);
  });
});

describe('M7 the thickness foreseen where the sheet was never gauged', () => {
  // + 0.3 − 0.1 about 5 mm: its middle is 5.1, and 0.2 to either side is a rectangular distribution (GUM 4.3.7).
  const uneven: RunPlan = { ...plan, sheet: { thickness: 5, minus: 0.1, plus: 0.3 } };
  const foreseen = () =>
    correctRates(uneven, [reading(0, 24, 0.72)], { had: [24, 0, 0], current: 0 }).regions;

  test('is the middle of what the sheet may be, less the depth', () => {
    const regions = foreseen();
    expect(regions.map(({ thickness, depth }) => (thickness?.value ?? 0) + depth.value)).toEqual(
      regions.map(() => expect.closeTo(5.1, 9)),
    );
    expect(regions[0]?.thickness?.value).toBeCloseTo(2.1, 4);
  });

  test('is as unsure as depth and sheet together, as a root of squares', () => {
    for (const { thickness, depth } of foreseen()) {
      expect(thickness?.within).toBeCloseTo(Math.hypot(depth.within, (1.96 * 0.2) / Math.sqrt(3)), 9);
    }
    expect(
      correctRates({ ...plan, sheet: undefined }, [], { had: [0, 0, 0], current: -1 }).regions[0]?.thickness,
    ).toBe(undefined);
  });
});

describe('M7 the verdict on a depth foreseen, with + 0.2 and − 0.04', () => {
  const [deepest, ...others] = plan.regions;
  if (deepest === undefined) throw new Error('three floors');
  // What has been etched cannot be put back, and floors that may get no deeper let nothing more be etched.
  const full = others.map((each) => ({ ...each, asked: { ...each.asked, plus: 0 } }));
  const foreseen = (depth: number) => {
    const regions = [{ ...deepest, asked: { depth, plus: 0.2, minus: 0.04 } }, ...full];
    const over = { had: [32, 48, 40], current: 2 };
    const done = [reading(2, 120, 3, { bare: { from: 0, to: 120 } })];
    return correctRates({ ...plan, regions }, done, over).regions[0];
  };

  test('uses up the share of its own side, and is met where its interval fits too', () => {
    // The depth is known within 1.96 × 0.010 mm.
    expect(foreseen(2.9)?.share).toBeCloseTo(0.1 / 0.2, 2);
    expect(foreseen(3.03)?.share).toBeCloseTo(0.03 / 0.04, 1);
    const verdicts = [2.79, 2.81, 2.9, 3.01, 3.03, 3.05].map((depth) => foreseen(depth)?.verdict);
    expect(verdicts).toEqual(['out of reach', 'in doubt', 'met', 'met', 'in doubt', 'out of reach']);
  });
});

test('M7 a stage’s own rate is as unsure as its metal over its minutes, what it has left as the rate to come', () => {
  const { stages, next } = correctRates(plan, [reading(0, 24, 0.72)], { had: [24, 0, 0], current: 0 });
  const [first, second] = stages;
  expect(first?.rate?.value).toBeCloseTo(0.03, 6);
  expect(first?.rate?.within).toBeCloseTo((1.96 * 0.01) / 24, 6);
  expect(second?.rate).toBeUndefined();
  for (const { left } of stages) expect(left.within / left.value).toBeCloseTo(next.within / next.value, 9);
});

describe('M7.3 what is still asked', () => {
  test('of a depth gauged where a final thickness is asked: what the plan asks, for nothing is known of the sheet', () => {
    const asThickness = { ...plan, regions: plan.regions.map((each) => ({ ...each, asThickness: true })) };
    const { regions } = correctRates(asThickness, [reading(0, 24, 0.6)], { had: [24, 0, 0], current: 0 });
    expect(regions.map(({ asked }) => asked.depth)).toEqual([3, 2.2, 1]);
  });

  test('land, though it be asked as a thickness, stays land', () => {
    const land = { id: 'R09', level: 0, asked: { depth: 0, plus: 0.1, minus: 0.1 }, asThickness: true };
    const withLand = { ...plan, regions: [...plan.regions, land] };
    const gauged = [
      reading(-1, 0, 5.13, { kind: 'thickness', region: 'R09' }),
      reading(0, 24, 0.72),
      reading(0, 24, 5.13, { kind: 'thickness', region: 'R09', bare: { from: 24, to: 24 } }),
    ];
    const so = { had: [24, 0, 0], current: 0 };
    const { stages, regions } = correctRates(withLand, gauged, so);
    expect(regions.map(({ id }) => id)).toEqual(['R01', 'R02', 'R03']);
    expect(stages[0]?.left.value).toBeCloseTo(0.08 / 0.03, 3);
  });

  test('of floors coated over nothing: they have no say in what the next stage etches', () => {
    const [shallow] = remasked.regions;
    const twin = {
      ...remasked,
      regions: [...remasked.regions, { ...shallow, id: 'R04' } as RunPlan['regions'][0]],
    };
    // 0.93 for 1.00 ± 0.05 in stage 1, which is over; 2.2 − 0.93 is to be etched at 0.93 / 40 mm/min.
    const readings = [reading(0, 40, 0.93), reading(0, 40, 0.93, { region: 'R04' })];
    const { stages } = correctRates(twin, readings, { had: [40, 0, 0], current: 1 });
    expect(stages[1]?.left.value).toBeCloseTo(1.27 / (0.93 / 40), 2);
  });
});

/**
 * The rates fitted to readings (M7.1), beside the same model solved another way: best linear unbiased prediction from the readings'
 * own covariance (C. R. Henderson, Biometrics 31 (1975) 423–447, from memory), which never writes a belief down as a row.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Fit, fitRates, type Reading } from '#run/correct-fit.ts';
import type { RunPlan } from '#run/correct-plan.ts';
import { threeFloors } from '#support/jobs/simulated-run.ts';
import { trials } from '#support/seeds/property-runs.ts';

const NOISE = 0.01;
/** Minutes in which the rate changes by the plan's spread, M7.1. */
const DRIFT = 30;

const planOf = (rateSpread: number): RunPlan => ({ ...threeFloors('peel-next'), rateSpread });

const depth = (to: number, value: number): Reading => ({
  stage: 0,
  bare: { from: 0, to },
  region: `at ${to}`,
  kind: 'depth',
  value,
});

/** Rate that comes next, with its standard uncertainty: readings of one floor at rising minutes, each with the noise assumed. */
function predicted(minutes: readonly number[], values: readonly number[], drift: number) {
  const lengths = minutes.map((minute, i) => minute - (minutes[i - 1] ?? 0));
  // Variance of each step of the rate: from the middle of one time to the middle of the next, the last to one of DRIFT minutes.
  const steps = lengths.map((length, i) => ((drift ** 2 / DRIFT) * (length + (lengths[i + 1] ?? DRIFT))) / 2);
  // By reading, how much each step adds to its depth: the minutes after it.
  const adds = minutes.map((minute) =>
    steps.map((_, step) => Math.max(0, minute - (minutes[step] ?? Number.NaN))),
  );
  const covariance = adds.map((a, i) =>
    adds.map(
      (b, j) =>
        steps.reduce((sum, each, k) => sum + each * (a[k] ?? 0) * (b[k] ?? 0), 0) +
        (i === j ? NOISE ** 2 : 0),
    ),
  );
  const withNext = adds.map((a) => steps.reduce((sum, each, k) => sum + each * (a[k] ?? 0), 0));
  const byMinutes = solved(covariance, minutes);
  const first = dot(byMinutes, values) / dot(byMinutes, minutes);
  const rest = values.map((value, i) => value - first * (minutes[i] ?? Number.NaN));
  const byNext = solved(covariance, withNext);
  const left = 1 - dot(byNext, minutes);
  const total = steps.reduce((sum, each) => sum + each, 0);
  const variance = total - dot(byNext, withNext) + left ** 2 / dot(byMinutes, minutes);
  return { value: first + dot(byNext, rest), u: Math.sqrt(variance) };
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, each, i) => sum + each * (b[i] ?? Number.NaN), 0);
}

/** By Cholesky's factors, the matrix being positive definite. */
function solved(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const factor: number[][] = [];
  for (const [i, row] of matrix.entries()) {
    const line: number[] = [];
    factor.push(line);
    for (let j = 0; j <= i; j++) {
      const sum = (row[j] ?? 0) - dot(line.slice(0, j), (factor[j] ?? []).slice(0, j));
      line.push(i === j ? Math.sqrt(sum) : sum / (factor[j]?.[j] ?? Number.NaN));
    }
  }
  const down: number[] = [];
  for (const [i, line] of factor.entries()) {
    down.push(((right[i] ?? 0) - dot(line.slice(0, i), down)) / (line[i] ?? Number.NaN));
  }
  const up = down.map(() => 0);
  for (let i = down.length - 1; i >= 0; i--) {
    let sum = down[i] ?? 0;
    for (let k = i + 1; k < down.length; k++) sum -= (factor[k]?.[i] ?? 0) * (up[k] ?? 0);
    up[i] = sum / (factor[i]?.[i] ?? Number.NaN);
  }
  return up;
}

const next = (fit: Fit) => fit.sum({ ahead: 1 });

describe('M7.1 a rate that does not drift', () => {
  test('stiff-belief: with a spread of 0 it is the one straight line through all readings, to ten digits', () => {
    const minutes = [11, 23, 37, 52, 71, 96];
    const values = [0.28, 0.58, 0.93, 1.31, 1.79, 2.42];
    // Through the origin: Σ t v / Σ t²; u = 0.01 / √Σ t².
    const squares = dot(minutes, minutes);
    const fit = fitRates(
      planOf(0),
      minutes.map((minute, i) => depth(minute, values[i] ?? Number.NaN)),
    );
    expect(next(fit).value / (dot(minutes, values) / squares)).toBeCloseTo(1, 10);
    expect(next(fit).u / (NOISE / Math.sqrt(squares))).toBeCloseTo(1, 8);
  });

  test('stiff-belief: beside a sheet that was gauged, too', () => {
    const minutes = [13, 29, 58, 83];
    const readings = minutes.flatMap((minute, i): Reading[] => [
      depth(minute, 0.026 * minute + (i % 2 === 0 ? 0.004 : -0.007)),
    ]);
    const gauged: Reading[] = [
      { stage: -1, bare: { from: 0, to: 0 }, region: 'R03', kind: 'thickness', value: 5.12 },
      { stage: 0, bare: { from: 0, to: 83 }, region: 'R03', kind: 'thickness', value: 5.12 - 2.15 },
    ];
    const few = fitRates(planOf(0), [...readings, ...gauged]);
    const some = fitRates(planOf(1e-7), [...readings, ...gauged]);
    expect(next(few).value / next(some).value).toBeCloseTo(1, 9);
    expect(few.sum({ sheet: 'R03' }).value).toBeCloseTo(5.12, 1);
  });
});

describe.each([0, 1e-9, 1e-6, 1e-3, 0.05, 0.4])('M7.1 with a spread of %f', (rateSpread) => {
  test('the rate that comes next, and how surely it is known, are the best linear prediction', () => {
    const plan = planOf(rateSpread);
    const run = fc.array(
      fc.record({
        minutes: fc.double({ min: 1.1, max: 40, noNaN: true }),
        off: fc.double({ min: -0.01, max: 0.01, noNaN: true }),
      }),
      { minLength: 1, maxLength: 9 },
    );
    fc.assert(
      fc.property(run, fc.double({ min: 0.011, max: 0.06, noNaN: true }), (times, rate) => {
        let minute = 0;
        const moments: number[] = [];
        const values: number[] = [];
        for (const { minutes, off } of times) {
          minute += minutes;
          moments.push(minute);
          values.push(rate * minute + off);
        }
        const fit = fitRates(
          plan,
          moments.map((at, i) => depth(at, values[i] ?? Number.NaN)),
        );
        const expected = predicted(moments, values, (plan.rate * rateSpread) / Math.sqrt(3));
        expect(next(fit).value / expected.value).toBeCloseTo(1, 8);
        // Readings that disagree widen what is known; these never do by more than a gauge.
        if (fit.freedom === Number.POSITIVE_INFINITY) expect(next(fit).u / expected.u).toBeCloseTo(1, 6);
      }),
      { numRuns: trials(60) },
    );
  });
});

describe('M7.1 what is known without readings, and from few', () => {
  const plan = planOf(0.05);
  const thickness = (stage: number, to: number, value: number): Reading => ({
    stage,
    bare: { from: 0, to },
    region: 'R03',
    kind: 'thickness',
    value,
  });

  test('the planned rate within its spread, as a rectangular distribution', () => {
    const fit = fitRates(plan, []);
    expect(next(fit).value).toBeCloseTo(plan.rate, 12);
    expect(next(fit).u).toBeCloseTo((plan.rate * 0.05) / Math.sqrt(3), 12);
    expect([fit.off, fit.moments, fit.freedom]).toEqual([[], [], Number.POSITIVE_INFINITY]);
  });

  test('a sheet of 5 mm + 0.3 − 0.1 lies about 5.1 mm until it is gauged, known by 0.2 / √3', () => {
    const uneven: RunPlan = { ...plan, sheet: { thickness: 5, plus: 0.3, minus: 0.1 } };
    // 0.1 mm over its middle: of that the gauge of 0.010 mm takes all but a thousandth.
    const believed = 0.2 / Math.sqrt(3);
    const share = believed ** 2 / (believed ** 2 + NOISE ** 2);
    const fit = fitRates(uneven, [thickness(-1, 0, 5.2)]);
    expect(fit.sum({ sheet: 'R03' }).value).toBeCloseTo(5.1 + 0.1 * share, 9);
    expect(fit.sum({ sheet: 'R03' }).u).toBeCloseTo(NOISE * Math.sqrt(share), 9);
  });

  test('a depth says nothing of the sheet in its region', () => {
    const deep: Reading = { ...depth(24, 0.72), region: 'R03' };
    const fit = fitRates(plan, [thickness(-1, 0, 5), deep]);
    expect(fit.sum({ removed: { spells: [{ from: 0, to: 24 }], sign: 1 } }).value).toBeCloseTo(0.72, 9);
    expect(fit.sum({ sheet: 'R03' }).value).toBeCloseTo(5, 9);
  });

  test('M7.2 three that scatter twice as far as a gauge: twice as unsure, with fewer degrees of freedom', () => {
    // Off their mean by −2, 0 and 2 standard deviations; two to spare: (4 + 0 + 4) / 2 is the square of 2.
    const fit = fitRates(
      plan,
      [0.7, 0.72, 0.74].map((value) => depth(24, value)),
    );
    expect(fit.off).toEqual([-2, 0, 2].map((each) => expect.closeTo(each, 6)));
    expect(fit.sum({ removed: { spells: [{ from: 0, to: 24 }], sign: 1 } }).u).toBeCloseTo(
      (2 * NOISE) / Math.sqrt(3),
      9,
    );
    // As for coupons, M5.5: 2 / (1 − 1/4)².
    expect(fit.freedom).toBeCloseTo(2 / 0.75 ** 2, 6);
  });
});

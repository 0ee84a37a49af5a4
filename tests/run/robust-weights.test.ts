/** One wrong reading among four (M7.2): the fit with it beside the fit without it. */
import { describe, expect, test } from 'vitest';
import { fitRates, type Reading } from '#run/correct-fit.ts';
import { cappedOff, robustShares, withoutApart } from '#run/robust-weights.ts';
import { threeFloors } from '#support/jobs/simulated-run.ts';

const depth = (value: number): Reading => ({
  stage: 0,
  bare: { from: 0, to: 25.6 },
  region: 'R01',
  kind: 'depth',
  value,
});
const good = [0.631, 0.647, 0.638];

describe('M7.2 one bad reading among four', () => {
  test.each([0.68, 0.703, 0.77, 0.94, 1.28, 3, 7, 0.57, 0.32, 0])(
    '%f mm among three of 0.64 moves the rate by less than its own uncertainty',
    (bad) => {
      const rateOf = (values: readonly number[]) =>
        fitRates(threeFloors('peel-next'), values.map(depth)).sum({
          removed: { spells: [{ from: 0, to: 25.6 }], sign: 1 },
        });
      const [without, withBad] = [rateOf(good), rateOf([...good, bad])];
      expect(Math.abs(withBad.value - without.value)).toBeLessThan(1.96 * withBad.u);
      expect(Math.abs(withBad.value - without.value)).toBeLessThan(1.96 * without.u);
    },
  );

  test('the place of four figures is where Huber’s function of their deviations sums to zero', () => {
    const values = [-0.4, 0.1, 0.3, 9];
    const offWith = (shares: readonly number[]) => {
      const sum = (each: (value: number, i: number) => number) =>
        values.reduce((total, value, i) => total + each(value, i), 0);
      const middle = sum((value, i) => value * (shares[i] ?? 0)) / sum((_, i) => shares[i] ?? 0);
      return values.map((value) => value - middle);
    };
    const off = offWith(robustShares([1, 1, 1, 1], offWith));
    // Huber 1964: ψ(x) = x up to the tuning constant, and that constant beyond; the scale is 1 here.
    const psi = off.map((each) => Math.max(-1.345, Math.min(1.345, each)));
    expect(psi.reduce((sum, each) => sum + each, 0)).toBeCloseTo(0, 6);
    expect(psi[3]).toBe(1.345);
  });

  test('repeats far from their median say nothing of the gauge; two have no median to stand apart from', () => {
    expect(withoutApart([0.631, 0.647, 0.638, 0.94], 0.01)).toEqual(good);
    expect(withoutApart([0.5, 1.5], 0.01)).toEqual([0.5, 1.5]);
    expect(cappedOff([0.3, -0.6, 50])).toEqual([0.3, 0.6, 2.5]);
    expect(cappedOff([])).toEqual([]);
  });

  test('the middle of repeats is theirs by size, whatever their order and number', () => {
    // Median 2.5, of whose distances 0.5, 0.5, 7.5, 1.5 the median is 1: 4 × 1.4826 mm to either side.
    expect(withoutApart([3, 2, 10, 1], 0.01)).toEqual([3, 2, 1]);
    expect(withoutApart([10, 9, 8.5, 3], 0.01)).toEqual([10, 9, 8.5]);
    // Three that agree better than the gauge are judged by the gauge: 0.04 mm about 0.640.
    expect(withoutApart([0.64, 0.641, 0.678], 0.01)).toEqual([0.64, 0.641, 0.678]);
    expect(withoutApart([0.64, 0.641, 0.683], 0.01)).toEqual([0.64, 0.641]);
    // Median of 12, 7 and 9.5 is 9.5; 2.5 times 1.4826 times that is more than any.
    expect(cappedOff([-12, 7, 9.5])).toEqual([12, 7, 9.5]);
    // Of 2, 3, 10 and 60 it is 6.5.
    expect(cappedOff([2, 60, -10, 3])).toEqual([2, expect.closeTo(2.5 * 1.4826 * 6.5, 9), 10, 3]);
  });

  test('deviations that no longer change are fitted once more and not again', () => {
    let fits = 0;
    const shares = robustShares([1, 1, 1], () => {
      fits++;
      return [0.3, -0.6, 9];
    });
    expect(shares).toEqual([1, 1, expect.closeTo(1.345 / 9, 9)]);
    expect(fits).toBe(2);
  });
});

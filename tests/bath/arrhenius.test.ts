/** A rate at another temperature, by Arrhenius' law; what it may be off by as a root of squares (GUM 5.1.2). */
import { describe, expect, test } from 'vitest';
import { arrheniusRatio, GAS_CONSTANT, rateAtTemperature } from '#bath/arrhenius.ts';
import type { SpreadFigure } from '#bath/known-figures.ts';
import type { Sourced } from '#bath/provenance.ts';

/** exp(E/R · (1/T₁ − 1/T₂)) in plain kelvins. */
const ratio = (energy: number, fromC: number, toC: number) =>
  Math.exp((energy / 8.314_462_618e-3) * (1 / (fromC + 273.15) - 1 / (toC + 273.15)));

const energy: SpreadFigure = { value: 46, from: 42, to: 58, source: 'a journal', kind: 'published' };
const rate: Sourced = { value: 0.02, source: 'a coupon', kind: 'measured', plusMinus: 0.0015 };
const step = { fromC: 80, toC: 88 };

test('M5.6 the gas constant is that of CODATA 2018, in kJ/(mol K)', () => {
  expect(GAS_CONSTANT.value).toBe(8.314_462_618e-3);
});

describe('M5.6 a rate turned from 80 to 88 °C', () => {
  test('grows by Arrhenius’ law, and says by what', () => {
    const turned = rateAtTemperature(rate, energy, step);
    expect(turned.value).toBeCloseTo(0.02 * ratio(46, 80, 88), 12);
    expect(turned.value).toBeGreaterThan(0.02 * 1.3);
    expect(turned.source).toBe('a coupon; turned from 80 to 88 °C with 46 kJ/mol');
  });

  test('is off by the root of squares of its own part, grown alike, and of the energy that lies farther off', () => {
    const own = 0.0015 * ratio(46, 80, 88);
    const higher = 0.02 * (ratio(58, 80, 88) - ratio(46, 80, 88));
    expect(rateAtTemperature(rate, energy, step).plusMinus).toBeCloseTo(
      Math.sqrt(own ** 2 + higher ** 2),
      12,
    );
  });

  test('takes the lower energy for the spread where that lies farther off', () => {
    const low = { ...energy, from: 20, to: 47 };
    const own = 0.0015 * ratio(46, 80, 88);
    const lower = 0.02 * (ratio(46, 80, 88) - ratio(20, 80, 88));
    expect(rateAtTemperature(rate, low, step).plusMinus).toBeCloseTo(Math.sqrt(own ** 2 + lower ** 2), 12);
  });

  test('without a part of its own it is off by the energies alone', () => {
    const { value, source, kind } = rate;
    const higher = 0.02 * (ratio(58, 80, 88) - ratio(46, 80, 88));
    expect(rateAtTemperature({ value, source, kind }, energy, step).plusMinus).toBeCloseTo(higher, 12);
  });

  test('is no surer than the less sure of rate and energy', () => {
    const kinds = (ofRate: Sourced['kind'], ofEnergy: Sourced['kind']) =>
      rateAtTemperature({ ...rate, kind: ofRate }, { ...energy, kind: ofEnergy }, step).kind;
    expect(kinds('measured', 'published')).toBe('published');
    expect(kinds('common-practice', 'measured')).toBe('common-practice');
    expect(kinds('user', 'memory')).toBe('memory');
    expect(kinds('measured', 'user')).toBe('user');
    expect(kinds('measured', 'measured')).toBe('measured');
  });
});

describe('M5.6 the ratio between two temperatures', () => {
  // Aluminium in caustic soda, 46 kJ/mol: Trans. IMF 54 (1976), abstract; the ratios follow from Arrhenius' law.
  test.each([
    [80, 92, 1.6734],
    [80, 90, 1.5394],
  ])('from %f to %f °C is %f', (fromC, toC, expected) => {
    expect(arrheniusRatio(46, { fromC, toC })).toBeCloseTo(expected, 4);
    expect(arrheniusRatio(46, { fromC: toC, toC: fromC })).toBeCloseTo(1 / expected, 4);
  });
});

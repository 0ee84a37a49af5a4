/**
 * A rate at another bath temperature (M5.6): rate(T₂) = rate(T₁) · exp(Eₐ/R · (1/T₁ − 1/T₂)), Arrhenius' law. Activation
 * energies that others give bound it from both sides.
 */
import { exp } from '#maths/exponential.ts';
import { hypot } from '#maths/hypot.ts';
import type { SpreadFigure } from './known-figures.ts';
import type { Sourced } from './provenance.ts';

const KELVIN_AT_0C = 273.15;

/** kJ/(mol K) */
export const GAS_CONSTANT: Sourced = { value: 8.314_462_618e-3, source: 'CODATA 2018', kind: 'published' };

/** °C. Over such a step the published energies of aluminium in caustic soda put the rate a fifth apart already. */
export const LONGEST_TEMPERATURE_STEP: Sourced = { value: 15, source: 'from memory', kind: 'memory' };

export interface TemperatureStep {
  readonly fromC: number;
  readonly toC: number;
}

/** `energy` in kJ/mol. */
export function arrheniusRatio(energy: number, { fromC, toC }: TemperatureStep): number {
  const inverse = 1 / (fromC + KELVIN_AT_0C) - 1 / (toC + KELVIN_AT_0C);
  return exp((energy / GAS_CONSTANT.value) * inverse);
}

/** The least sure of two grades. */
const SURENESS: readonly Sourced['kind'][] = ['memory', 'common-practice', 'published', 'user', 'measured'];

/** What the rate was off by goes along, and the spread of the energies is added to it as a root of squares. */
export function rateAtTemperature(rate: Sourced, energy: SpreadFigure, step: TemperatureStep): Sourced {
  const at = (each: number) => rate.value * arrheniusRatio(each, step);
  const value = at(energy.value);
  const spread = Math.max(Math.abs(at(energy.from) - value), Math.abs(at(energy.to) - value));
  const own = ((rate.plusMinus ?? 0) * value) / rate.value;
  const kinds = [rate.kind, energy.kind];
  return {
    value,
    source: `${rate.source}; turned from ${step.fromC} to ${step.toC} °C with ${energy.value} kJ/mol`,
    kind: SURENESS.find((kind) => kinds.includes(kind)) ?? energy.kind,
    plusMinus: hypot(own, spread),
  };
}

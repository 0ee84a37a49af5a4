/**
 * Aluminium in caustic soda: 2 Al + 2 NaOH + 6 H₂O → 2 NaAl(OH)₄ + 3 H₂. What follows is stoichiometry with the standard
 * atomic weights and the ideal gas.
 */
import type { Sourced } from './provenance.ts';

const WEIGHTS = 'IUPAC, abridged standard atomic weights';

/** g/mol */
export const ALUMINIUM_WEIGHT: Sourced = { value: 26.982, source: WEIGHTS, kind: 'published' };
/** g/mol, of Na 22.990, O 15.999 and H 1.008. */
export const CAUSTIC_WEIGHT: Sourced = { value: 39.997, source: WEIGHTS, kind: 'published' };

/** Litres of a mol of an ideal gas at 0 °C and 101.325 kPa. */
export const MOLAR_VOLUME: Sourced = { value: 22.413_969_54, source: 'CODATA 2018', kind: 'published' };

const HYDROGEN_PER_ALUMINIUM = 3 / 2;

/** Litres of hydrogen, at 0 °C and 101.325 kPa, that dissolving so much aluminium in caustic soda gives off. */
export function hydrogenLitresOf(aluminiumGrams: number): number {
  return (aluminiumGrams / ALUMINIUM_WEIGHT.value) * HYDROGEN_PER_ALUMINIUM * MOLAR_VOLUME.value;
}

/** Grams of sodium hydroxide that dissolving so much aluminium uses up: one mol a mol. */
export function causticGramsOf(aluminiumGrams: number): number {
  return (aluminiumGrams * CAUSTIC_WEIGHT.value) / ALUMINIUM_WEIGHT.value;
}

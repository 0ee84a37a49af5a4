/**
 * Aluminium in caustic soda: 2 Al + 2 NaOH + 6 H₂O → 2 NaAl(OH)₄ + 3 H₂. What follows is stoichiometry with the standard
 * atomic weights and the ideal gas (M5.3).
 */
import type { Sourced } from './provenance.ts';

const WEIGHTS = 'IUPAC, abridged standard atomic weights';

/** g/mol */
export const ALUMINIUM_WEIGHT: Sourced = { value: 26.982, source: WEIGHTS, kind: 'published' };
/** g/mol, of Na 22.990, O 15.999 and H 1.008. */
export const CAUSTIC_WEIGHT: Sourced = { value: 39.997, source: WEIGHTS, kind: 'published' };

/** Litres of a mol of an ideal gas at 0 °C and 101.325 kPa. */
export const MOLAR_VOLUME: Sourced = { value: 22.413_969_54, source: 'CODATA 2018', kind: 'published' };

/**
 * kJ a mol of aluminium dissolved: 2 Al + 2 OH⁻ + 6 H₂O → 2 Al(OH)₄⁻ + 3 H₂, from the formation enthalpies of aluminate −1502.5,
 * hydroxide −230.0 and water −285.83 kJ/mol.
 */
export const HEAT_OF_ALUMINIUM: Sourced = {
  value: 415,
  source: 'derived from standard enthalpies of formation, themselves from memory',
  kind: 'memory',
};

/** kJ that dissolving so much aluminium in caustic soda gives off. */
export function heatOf(aluminiumGrams: number): number {
  return (aluminiumGrams / ALUMINIUM_WEIGHT.value) * HEAT_OF_ALUMINIUM.value;
}

const HYDROGEN_PER_ALUMINIUM = 3 / 2;

/** Litres of hydrogen, at 0 °C and 101.325 kPa, that dissolving so much aluminium in caustic soda gives off. */
export function hydrogenLitresOf(aluminiumGrams: number): number {
  return (aluminiumGrams / ALUMINIUM_WEIGHT.value) * HYDROGEN_PER_ALUMINIUM * MOLAR_VOLUME.value;
}

/** Grams of sodium hydroxide that dissolving so much aluminium uses up: one mol a mol. */
export function causticGramsOf(aluminiumGrams: number): number {
  return (aluminiumGrams * CAUSTIC_WEIGHT.value) / ALUMINIUM_WEIGHT.value;
}

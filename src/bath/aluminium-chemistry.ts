/**
 * Aluminium in caustic soda: 2 Al + 2 NaOH + 6 H₂O → 2 NaAl(OH)₄ + 3 H₂. What follows is stoichiometry with the standard
 * atomic weights (IUPAC abridged, four figures: Al 26.982, H 1.008, Na 22.990, O 15.999) and the ideal gas.
 */
const GRAMS_A_MOL_ALUMINIUM = 26.982;
const HYDROGEN_PER_ALUMINIUM = 3 / 2;

/** Litres of a mol of an ideal gas at 0 °C and 101.325 kPa (CODATA 2018: 22.413 969 54 L/mol). */
const LITRES_A_MOL = 22.413_969_54;

/** Litres of hydrogen, at 0 °C and 101.325 kPa, that dissolving so much aluminium in caustic soda gives off. */
export function hydrogenLitresOf(aluminiumGrams: number): number {
  return (aluminiumGrams / GRAMS_A_MOL_ALUMINIUM) * HYDROGEN_PER_ALUMINIUM * LITRES_A_MOL;
}

/** Units of length: what a drawing may be drawn in. Inside Isobath every length is a millimetre. */

/**
 * Millimetres in one unit, and the value of the DXF header variable `$INSUNITS` that names it
 * (DXF reference, header section, $INSUNITS 1 to 24).
 * Definitions: inch 25.4 mm and its multiples, international yard and pound agreement (1959); US survey foot
 * 1200/3937 m, Mendenhall order (1893); astronomical unit, IAU 2012 resolution B2; light year and parsec, IAU
 * (Julian year times the speed of light; 648 000/π astronomical units); the rest SI prefixes.
 */
const ASTRONOMICAL_UNIT = 149_597_870_700_000;
const US_SURVEY_FOOT = 1_200_000 / 3937;

const UNITS = {
  in: { insunits: 1, millimetres: 25.4, name: 'inch' },
  ft: { insunits: 2, millimetres: 304.8, name: 'foot' },
  mi: { insunits: 3, millimetres: 1_609_344, name: 'mile' },
  mm: { insunits: 4, millimetres: 1, name: 'millimetre' },
  cm: { insunits: 5, millimetres: 10, name: 'centimetre' },
  m: { insunits: 6, millimetres: 1000, name: 'metre' },
  km: { insunits: 7, millimetres: 1e6, name: 'kilometre' },
  uin: { insunits: 8, millimetres: 2.54e-5, name: 'microinch' },
  mil: { insunits: 9, millimetres: 0.0254, name: 'mil (thousandth of an inch)' },
  yd: { insunits: 10, millimetres: 914.4, name: 'yard' },
  angstrom: { insunits: 11, millimetres: 1e-7, name: 'ångström' },
  nm: { insunits: 12, millimetres: 1e-6, name: 'nanometre' },
  um: { insunits: 13, millimetres: 1e-3, name: 'micrometre' },
  dm: { insunits: 14, millimetres: 100, name: 'decimetre' },
  dam: { insunits: 15, millimetres: 10_000, name: 'decametre' },
  hm: { insunits: 16, millimetres: 100_000, name: 'hectometre' },
  Gm: { insunits: 17, millimetres: 1e12, name: 'gigametre' },
  au: { insunits: 18, millimetres: ASTRONOMICAL_UNIT, name: 'astronomical unit' },
  ly: { insunits: 19, millimetres: 9_460_730_472_580_800_000, name: 'light year' },
  pc: { insunits: 20, millimetres: (ASTRONOMICAL_UNIT * 648_000) / Math.PI, name: 'parsec' },
  'us-ft': { insunits: 21, millimetres: US_SURVEY_FOOT, name: 'US survey foot' },
  'us-in': { insunits: 22, millimetres: US_SURVEY_FOOT / 12, name: 'US survey inch' },
  'us-yd': { insunits: 23, millimetres: US_SURVEY_FOOT * 3, name: 'US survey yard' },
  'us-mi': { insunits: 24, millimetres: US_SURVEY_FOOT * 5280, name: 'US survey mile' },
} as const;

export type LengthUnit = keyof typeof UNITS;

/** Every unit by its short name, in the order of `$INSUNITS`. */
export const LENGTH_UNITS = Object.keys(UNITS) as readonly LengthUnit[];

export function millimetresIn(unit: LengthUnit): number {
  return UNITS[unit].millimetres;
}

/** The `$INSUNITS` value that names the unit in a DXF file. */
export function insunitsOf(unit: LengthUnit): number {
  return UNITS[unit].insunits;
}

/** The unit that a `$INSUNITS` value names; none for 0 (unitless) and for values outside the reference. */
export function unitOfInsunits(value: number): LengthUnit | undefined {
  return LENGTH_UNITS.find((unit) => UNITS[unit].insunits === value);
}

/** The unit in full, for sentences. */
export function unitName(unit: LengthUnit): string {
  return UNITS[unit].name;
}

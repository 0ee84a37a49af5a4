/** Units of length: what a drawing may be drawn in. Inside Isobath every length is a millimetre. */

/**
 * Millimetres in one unit, by the value of `$INSUNITS` (DXF reference, header variable INSUNITS: 1 inches … 24 US survey mile).
 * Definitions: inch 25.4 mm (international yard and pound agreement, 1959); US survey foot 1200/3937 m; the rest SI.
 */
const UNITS = {
  in: { insunits: 1, millimetres: 25.4 },
  mm: { insunits: 4, millimetres: 1 },
} as const;

export type LengthUnit = keyof typeof UNITS;

export function millimetresIn(unit: LengthUnit): number {
  return UNITS[unit].millimetres;
}

/** The `$INSUNITS` value that names the unit in a DXF file. */
export function insunitsOf(unit: LengthUnit): number {
  return UNITS[unit].insunits;
}

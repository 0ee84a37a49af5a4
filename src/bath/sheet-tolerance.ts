/**
 * Thickness tolerance of cold-rolled sheet and plate as delivered: EN 485-4 (1994), table 1, alloy group II, ± mm, by the width that it was rolled
 * to. Where nobody knows that of an offcut, widths to 2000 mm count: wider sheet is rare, and known as such. Past 30 mm the widest columns are
 * not held here, and what the standard leaves open is not known either.
 */
import type { Alloy } from './known-figures.ts';
import type { Sourced } from './provenance.ts';

/** Widths up to and including, mm. */
const WIDTHS = [1000, 1250, 1600, 2000, 2500, 3000, 3500] as const;
/** Of a sheet whose width nobody knows. */
const USUAL_WIDTH = 2000;
/** Rows: thickness up to and including, a tolerance a width as far as the standard gives one; the table starts above 0.2 mm. */
const STARTS_ABOVE = 0.2;
const ROWS: readonly (readonly [upTo: number, ...tolerances: readonly number[]])[] = [
  [0.4, 0.03, 0.05, 0.06],
  [0.5, 0.03, 0.05, 0.06, 0.07, 0.1],
  [0.6, 0.04, 0.06, 0.07, 0.08, 0.11],
  [0.8, 0.04, 0.07, 0.08, 0.09, 0.12],
  [1.0, 0.05, 0.08, 0.09, 0.1, 0.13],
  [1.2, 0.05, 0.09, 0.1, 0.12, 0.14],
  [1.5, 0.07, 0.11, 0.12, 0.14, 0.16],
  [1.8, 0.08, 0.12, 0.13, 0.15, 0.17],
  [2.0, 0.09, 0.13, 0.14, 0.16, 0.19],
  [2.5, 0.1, 0.14, 0.15, 0.17, 0.2],
  [3.0, 0.11, 0.15, 0.17, 0.19, 0.23],
  [3.5, 0.12, 0.17, 0.19, 0.2, 0.24],
  [4.0, 0.15, 0.2, 0.22, 0.23, 0.25, 0.34, 0.38],
  [5.0, 0.18, 0.22, 0.24, 0.25, 0.29, 0.36, 0.42],
  [6.0, 0.2, 0.24, 0.25, 0.26, 0.32, 0.4, 0.46],
  [8.0, 0.24, 0.3, 0.31, 0.32, 0.38, 0.44, 0.5],
  [10, 0.27, 0.33, 0.36, 0.38, 0.44, 0.5, 0.56],
  [12, 0.32, 0.38, 0.4, 0.41, 0.47, 0.53, 0.59],
  [15, 0.36, 0.42, 0.43, 0.45, 0.51, 0.57, 0.63],
  [20, 0.38, 0.44, 0.46, 0.48, 0.54, 0.6, 0.66],
  [25, 0.4, 0.46, 0.48, 0.5, 0.56, 0.62, 0.68],
  [30, 0.45, 0.5, 0.53, 0.55, 0.6, 0.65, 0.7],
  [40, 0.5, 0.55, 0.58, 0.6, 0.65],
  [50, 0.55, 0.6, 0.63, 0.65, 0.7],
];

/** Plus and minus alike; undefined for other alloys and for thicknesses and widths that the table here does not hold. */
export function sheetTolerance(
  alloy: Alloy | undefined,
  thickness: number,
  width?: number,
): Sourced | undefined {
  if (alloy?.sheetGroup === undefined || thickness <= STARTS_ABOVE) return undefined;
  const row = ROWS.find(([upTo]) => thickness <= upTo);
  const column = WIDTHS.findIndex((upTo) => (width ?? USUAL_WIDTH) <= upTo);
  const value = column < 0 ? undefined : row?.[column + 1];
  if (value === undefined) return undefined;
  const which =
    width === undefined ? `width not given: to ${USUAL_WIDTH} mm` : `widths to ${WIDTHS[column]} mm`;
  return { value, source: `EN 485-4 (1994), alloy group II, cold rolled, ${which}`, kind: 'published' };
}

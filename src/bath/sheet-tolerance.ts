/**
 * Thickness tolerance of cold-rolled sheet as delivered: EN 485-4 (1994), alloy group II, ± mm, by the width that the sheet was rolled to. Where
 * nobody knows that of an offcut, the figures of the widest sheets held here (to 2000 mm) count, which are the largest. The standard goes on to
 * 3500 mm, and below 0.8 and above 6 mm: what is not held here is not known here.
 */
import type { Alloy } from './known-figures.ts';
import type { Sourced } from './provenance.ts';

/** Widths up to and including, mm. */
const WIDTHS = [1000, 1250, 1600, 2000] as const;
/** Rows: thickness up to and including, a tolerance a width; the table starts at 0.8 mm. */
const STARTS_AT = 0.8;
const ROWS: readonly (readonly [upTo: number, ...tolerances: readonly number[]])[] = [
  [1.0, 0.05, 0.08, 0.09, 0.1],
  [1.2, 0.05, 0.09, 0.1, 0.12],
  [1.5, 0.07, 0.11, 0.12, 0.14],
  [1.8, 0.08, 0.12, 0.13, 0.15],
  [2.0, 0.09, 0.13, 0.14, 0.16],
  [2.5, 0.1, 0.14, 0.15, 0.17],
  [3.0, 0.11, 0.15, 0.17, 0.19],
  [3.5, 0.12, 0.17, 0.19, 0.2],
  [4.0, 0.15, 0.2, 0.22, 0.23],
  [5.0, 0.18, 0.22, 0.24, 0.25],
  [6.0, 0.2, 0.24, 0.25, 0.26],
];

/** Plus and minus alike; undefined for other alloys and for thicknesses and widths that the table here does not hold. */
export function sheetTolerance(
  alloy: Alloy | undefined,
  thickness: number,
  width?: number,
): Sourced | undefined {
  if (alloy?.sheetGroup === undefined || thickness < STARTS_AT) return undefined;
  const row = ROWS.find(([upTo]) => thickness <= upTo);
  const column = width === undefined ? WIDTHS.length - 1 : WIDTHS.findIndex((upTo) => width <= upTo);
  const value = column < 0 ? undefined : row?.[column + 1];
  if (value === undefined) return undefined;
  const which = width === undefined ? 'widest sheets (to 2000 mm)' : `widths to ${WIDTHS[column]} mm`;
  return { value, source: `EN 485-4 (1994), alloy group II, cold rolled, ${which}`, kind: 'published' };
}

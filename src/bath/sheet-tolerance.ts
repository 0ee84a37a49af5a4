/**
 * Thickness tolerance of cold-rolled sheet as delivered: EN 485-4 (1994), alloy group II, ± mm. The width that the sheet
 * was rolled to is not known when its offcut comes to the bath, so the figures are those of the table's widest sheets
 * (over 1600 to 2000 mm), which are the largest.
 */
import type { Alloy } from './known-figures.ts';
import type { Sourced } from './provenance.ts';

/** Rows: thickness up to and including, tolerance; the table starts at 0.8 mm. */
const STARTS_AT = 0.8;
const ROWS: readonly (readonly [upTo: number, tolerance: number])[] = [
  [1.0, 0.1],
  [1.2, 0.12],
  [1.5, 0.14],
  [1.8, 0.15],
  [2.0, 0.16],
  [2.5, 0.17],
  [3.0, 0.19],
  [3.5, 0.2],
  [4.0, 0.23],
  [5.0, 0.25],
  [6.0, 0.26],
];

/** Plus and minus alike; undefined for other alloys and for thicknesses that the table does not hold. */
export function sheetTolerance(alloy: Alloy | undefined, thickness: number): Sourced | undefined {
  if (alloy?.sheetGroup === undefined || thickness < STARTS_AT) return undefined;
  const row = ROWS.find(([upTo]) => thickness <= upTo);
  if (row === undefined) return undefined;
  return {
    value: row[1],
    source: 'EN 485-4 (1994), alloy group II, cold rolled, widest sheets (to 2000 mm)',
    kind: 'published',
  };
}

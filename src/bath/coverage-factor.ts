/** Half-width of a 95 % interval in standard uncertainties, by degrees of freedom: Student's t, JCGM 100:2008 (GUM) table G.2. */

const ROWS: readonly (readonly [freedom: number, factor: number])[] = [
  [1, 12.71],
  [2, 4.3],
  [3, 3.18],
  [4, 2.78],
  [5, 2.57],
  [6, 2.45],
  [7, 2.36],
  [8, 2.31],
  [9, 2.26],
  [10, 2.23],
  [12, 2.18],
  [15, 2.13],
  [20, 2.09],
  [30, 2.04],
  [50, 2.01],
  [100, 1.984],
  [Number.POSITIVE_INFINITY, 1.96],
];

/** The row of the next fewer degrees of freedom: never too narrow. */
export function coverageFactor(freedom: number): number {
  let factor = 12.71;
  for (const [least, each] of ROWS) if (freedom >= least) factor = each;
  return factor;
}

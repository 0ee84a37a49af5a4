/** Etch factor φ: undercut divided by depth of cut (the chemical-milling convention), constant or by depth. */

/** Rows [depth mm, factor], depths rising; linear in between, held beyond the ends; never empty. One row is a constant. */
export type EtchFactor = readonly (readonly [depth: number, factor: number])[];

/** φ of a cut of the given depth. */
export function etchFactorAt(table: EtchFactor, depth: number): number {
  let below: readonly [number, number] | undefined;
  for (const row of table) {
    if (row[0] === depth) return row[1];
    if (row[0] > depth) {
      if (below === undefined) return row[1];
      return below[1] + ((row[1] - below[1]) * (depth - below[0])) / (row[0] - below[0]);
    }
    below = row;
  }
  if (below === undefined) throw new Error('broken promise: an etch factor table has a row');
  return below[1];
}

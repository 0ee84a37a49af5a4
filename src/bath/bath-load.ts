/** What the bath holds of dissolved metal before and after a run, against what it may hold (M5.8). The user gives all three. */

export interface Tank {
  readonly litres: number;
  /** g/L: dissolved metal that the bath holds now, and may hold. */
  readonly dissolved: number;
  readonly dissolvedLimit: number;
}

/** g/L */
export function bathLoad({ litres, dissolved, dissolvedLimit }: Tank, grams: number) {
  return { before: dissolved, after: dissolved + grams / litres, limit: dissolvedLimit };
}

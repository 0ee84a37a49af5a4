/**
 * Least squares the long way, to judge those of the product by: normal equations in the readings' own coordinates, solved by Cramer's rule
 * with determinants by cofactors; and each left-out reading predicted by a fit made again without it.
 */
export interface Reading {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export type Basis = (x: number, y: number) => readonly number[];

export const BASES: Readonly<Record<'constant' | 'plane' | 'quadratic', Basis>> = {
  constant: () => [1],
  plane: (x, y) => [1, x, y],
  quadratic: (x, y) => [1, x, y, x * x, x * y, y * y],
};

export function leastSquares(readings: readonly Reading[], basis: Basis): readonly number[] {
  const rows = readings.map(({ x, y }) => basis(x, y));
  const size = rows[0]?.length ?? 0;
  const dot = (i: number, of: (row: readonly number[], k: number) => number) =>
    rows.reduce((sum, row, k) => sum + (row[i] ?? 0) * of(row, k), 0);
  const matrix = Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (_each, j) => dot(i, (row) => row[j] ?? 0)),
  );
  const right = Array.from({ length: size }, (_, i) => dot(i, (_row, k) => readings[k]?.z ?? 0));
  const whole = determinant(matrix);
  return right.map((_, column) => {
    const swapped = matrix.map((row, i) => row.map((each, j) => (j === column ? (right[i] ?? 0) : each)));
    return determinant(swapped) / whole;
  });
}

export function valueAt(terms: readonly number[], basis: Basis, x: number, y: number): number {
  return basis(x, y).reduce((sum, each, i) => sum + each * (terms[i] ?? 0), 0);
}

/** Root mean square by which fits without a reading miss it. */
export function leftOut(readings: readonly Reading[], basis: Basis): number {
  const squares = readings.map(({ x, y, z }, index) => {
    const terms = leastSquares(
      readings.filter((_, each) => each !== index),
      basis,
    );
    return (z - valueAt(terms, basis, x, y)) ** 2;
  });
  return Math.sqrt(squares.reduce((sum, each) => sum + each, 0) / readings.length);
}

function determinant(matrix: readonly (readonly number[])[]): number {
  const [first, ...others] = matrix;
  if (first === undefined) return 1;
  return first.reduce((sum, each, column) => {
    const minor = others.map((row) => row.filter((_, j) => j !== column));
    return sum + (column % 2 === 0 ? 1 : -1) * each * determinant(minor);
  }, 0);
}

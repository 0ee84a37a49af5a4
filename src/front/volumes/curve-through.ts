/**
 * A costly curve at many places, from few: between two places its difference from a baseline is taken from a polynomial
 * where a coarser one foretells what is found at the quarters; elsewhere both halves are looked at in the same way.
 */
import { itemAt } from '#geometry/assert.ts';

export interface CurveAsk {
  /** Where the curve is wanted, rising; before the first of them it starts at (0, 0). */
  readonly places: readonly number[];
  /** A cheap curve near the costly one, by number of the place. */
  readonly baseline: (i: number) => number;
  /** Share of the curve's last value by which foretold and found may differ. */
  readonly share: number;
}

/** Places so near each other that all between them are calculated: there are no quarters to look at. */
const TOO_NEAR = 4;

/** The curve at each place; `exact` gives it at one of them. */
export function curveThrough(exact: (i: number) => number, { places, baseline, share }: CurveAsk): number[] {
  const values: number[] = [];
  const last = places.length - 1;
  const at = (i: number): number => {
    const known = values[i];
    if (known !== undefined) return known;
    const value = exact(i);
    values[i] = value;
    return value;
  };
  const placeOf = (i: number): number => (i < 0 ? 0 : itemAt(places, i));
  const excess = (i: number): number => (i < 0 ? 0 : at(i) - baseline(i));
  const within = (low: number, high: number): void => {
    if (high - low <= TOO_NEAR) {
      for (let i = low + 1; i < high; i++) at(i);
      return;
    }
    const middle = (low + high) >> 1;
    const quarters = [(low + middle) >> 1, (middle + high) >> 1];
    const coarse = [low, middle, high].map((i) => [placeOf(i), excess(i)] as const);
    const allowed = share * Math.abs(at(last));
    const isSmooth = quarters.every((i) => Math.abs(polynomialAt(coarse, placeOf(i)) - excess(i)) <= allowed);
    if (!isSmooth) {
      within(low, middle);
      within(middle, high);
      return;
    }
    const fine = [...coarse, ...quarters.map((i) => [placeOf(i), excess(i)] as const)];
    for (let i = low + 1; i < high; i++) values[i] ??= baseline(i) + polynomialAt(fine, placeOf(i));
  };
  if (last >= 0) at(last);
  within(-1, last);
  return values;
}

/** Lagrange's polynomial through some points. */
function polynomialAt(points: readonly (readonly [x: number, y: number])[], x: number): number {
  return points.reduce((sum, [xi, yi], i) => {
    let weight = 1;
    points.forEach(([xj], j) => {
      if (j !== i) weight *= (x - xj) / (xi - xj);
    });
    return sum + weight * yi;
  }, 0);
}

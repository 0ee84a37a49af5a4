/**
 * The smooth cubic through given points: twice continuously differentiable, laid out by chord length, with the given end directions
 * or, without them, no bending at the ends; closed, it goes round smoothly.
 * Source: de Boor, A Practical Guide to Splines, chapter IV (complete, natural and periodic cubic spline interpolation).
 */
import { assert, itemAt } from '#geometry/assert.ts';
import { distance, type Point } from '#geometry/point.ts';
import type { SplinePrimitive } from './curve-primitive.ts';

export interface ThroughPoints {
  /** At least two, no two neighbours in one place; the first not repeated when closed. */
  readonly points: readonly Point[];
  readonly closed: boolean;
  /** Unit directions at the ends of an open curve. */
  readonly startDirection: Point | undefined;
  readonly endDirection: Point | undefined;
}

export function splineThrough(through: ThroughPoints): SplinePrimitive {
  assert(through.points.length >= 2, 'a curve goes through two points at least');
  const closed = through.closed && through.points.length > 2;
  const points = closed ? [...through.points, itemAt(through.points, 0)] : through.points;
  const steps = points.slice(1).map((point, n) => distance(itemAt(points, n), point));
  const xs = points.map((point) => point.x);
  const ys = points.map((point) => point.y);
  const slopes = (
    values: readonly number[],
    first: number | undefined,
    last: number | undefined,
  ): number[] => (closed ? closedSlopes(values, steps) : openSlopes(values, steps, first, last));
  return toSpline(
    points,
    steps,
    slopes(xs, through.startDirection?.x, through.endDirection?.x),
    slopes(ys, through.startDirection?.y, through.endDirection?.y),
  );
}

/** One cubic between each two points, as a spline whose inner knots are threefold. */
function toSpline(
  points: readonly Point[],
  steps: readonly number[],
  slopesX: readonly number[],
  slopesY: readonly number[],
): SplinePrimitive {
  const control: Point[] = [itemAt(points, 0)];
  const knots = [0, 0, 0, 0];
  let t = 0;
  for (const [n, step] of steps.entries()) {
    const from = itemAt(points, n);
    const to = itemAt(points, n + 1);
    const third = step / 3;
    control.push({ x: from.x + itemAt(slopesX, n) * third, y: from.y + itemAt(slopesY, n) * third });
    control.push({ x: to.x - itemAt(slopesX, n + 1) * third, y: to.y - itemAt(slopesY, n + 1) * third });
    control.push(to);
    t += step;
    knots.push(t, t, t);
  }
  knots.push(t);
  return { kind: 'spline', degree: 3, knots, points: control, weights: undefined };
}

/** Slopes at the points of an open curve: each inner row says that curvature does not jump; the end rows give slope or no bending. */
function openSlopes(
  values: readonly number[],
  steps: readonly number[],
  first: number | undefined,
  last: number | undefined,
): number[] {
  const rows = values.map((value, n): Row => {
    if (n === 0) {
      if (first !== undefined) return { below: 0, middle: 1, above: 0, right: first };
      return { below: 0, middle: 2, above: 1, right: (3 * (itemAt(values, 1) - value)) / itemAt(steps, 0) };
    }
    if (n === values.length - 1) {
      if (last !== undefined) return { below: 0, middle: 1, above: 0, right: last };
      return {
        below: 1,
        middle: 2,
        above: 0,
        right: (3 * (value - itemAt(values, n - 1))) / itemAt(steps, n - 1),
      };
    }
    return innerRow(
      [itemAt(values, n - 1), value, itemAt(values, n + 1)],
      [itemAt(steps, n - 1), itemAt(steps, n)],
    );
  });
  return solveRows(rows);
}

interface Row {
  readonly below: number;
  readonly middle: number;
  readonly above: number;
  readonly right: number;
}

/** Of a value with its neighbours, and the steps to them. */
function innerRow(
  [before, value, after]: readonly [number, number, number],
  [stepBefore, stepAfter]: readonly [number, number],
): Row {
  return {
    below: stepAfter,
    middle: 2 * (stepBefore + stepAfter),
    above: stepBefore,
    right: 3 * ((stepAfter * (value - before)) / stepBefore + (stepBefore * (after - value)) / stepAfter),
  };
}

/** Slopes of a closed curve, whose last value repeats the first: the rows run round, so two systems are solved (Sherman–Morrison). */
function closedSlopes(values: readonly number[], steps: readonly number[]): number[] {
  const count = values.length - 1;
  const at = (list: readonly number[], n: number): number => itemAt(list, (n + count) % count);
  const rows = Array.from({ length: count }, (_, n) =>
    innerRow([at(values, n - 1), at(values, n), at(values, n + 1)], [at(steps, n - 1), at(steps, n)]),
  );
  const first = itemAt(rows, 0);
  const last = itemAt(rows, count - 1);
  const gamma = -first.middle;
  const corner = (row: Row, n: number): Row => {
    if (n === 0) return { ...row, below: 0, middle: row.middle - gamma };
    if (n === count - 1) return { ...row, above: 0, middle: row.middle - (last.above * first.below) / gamma };
    return row;
  };
  const open = rows.map(corner);
  const base = solveRows(open);
  const update = solveRows(
    open.map((row, n) => ({ ...row, right: n === 0 ? gamma : n === count - 1 ? last.above : 0 })),
  );
  const share = first.below / gamma;
  const factor =
    (itemAt(base, 0) + share * itemAt(base, count - 1)) /
    (1 + itemAt(update, 0) + share * itemAt(update, count - 1));
  const slopes = base.map((value, n) => value - factor * itemAt(update, n));
  return [...slopes, itemAt(slopes, 0)];
}

/** Three-diagonal system by elimination; the rows here are diagonally dominant, so no pivoting is needed. */
function solveRows(rows: readonly Row[]): number[] {
  const above: number[] = [];
  const right: number[] = [];
  for (const [n, row] of rows.entries()) {
    const before =
      n === 0 ? { above: 0, right: 0 } : { above: itemAt(above, n - 1), right: itemAt(right, n - 1) };
    const pivot = row.middle - row.below * before.above;
    above.push(row.above / pivot);
    right.push((row.right - row.below * before.right) / pivot);
  }
  const solution = [...right];
  for (let n = rows.length - 2; n >= 0; n--) {
    solution[n] = itemAt(right, n) - itemAt(above, n) * itemAt(solution, n + 1);
  }
  return solution;
}

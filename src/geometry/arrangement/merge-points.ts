/**
 * Points that are one place. Nearness is made transitive: a chain of points, each within the tolerance of the next, is
 * one place, so that the answer does not depend on the order of the points. Cost: near linear, also where thousands of
 * points lie at one place: a fine cell is so small that all its points are one place, and is asked about as one.
 */
import { itemAt } from '#geometry/assert.ts';
import { type DisjointSets, disjointSets } from '#geometry/disjoint-sets.ts';
import type { Point } from '#geometry/point.ts';

/** Coarse cells, this many tolerances wide, find what is near: few points lie near a cell's edge. */
const COARSE = 16;

/** Fine cells to a tolerance: two points of one cell are at most 1/√2 of the tolerance apart. */
const FINE = 2;

/** For each point the smallest number of a point at the same place. */
export function mergePoints(points: readonly Point[], tolerance: number): Int32Array {
  const coarse = COARSE * tolerance;
  const grid: Grid = {
    points,
    sets: disjointSets(points.length),
    tolerance,
    lastInCoarse: new Map(),
    before: new Int32Array(points.length).fill(-1),
    nextInFine: new Int32Array(points.length).fill(-1),
  };
  points.forEach(({ x, y }, number) => {
    const home = cellKey(Math.floor(x / coarse), Math.floor(y / coarse));
    const highX = Math.floor((x + tolerance) / coarse);
    const highY = Math.floor((y + tolerance) / coarse);
    for (let cellX = Math.floor((x - tolerance) / coarse); cellX <= highX; cellX++) {
      for (let cellY = Math.floor((y - tolerance) / coarse); cellY <= highY; cellY++) {
        uniteInCell(grid, cellKey(cellX, cellY), number);
      }
    }
    addToCell(grid, home, number);
  });
  return Int32Array.from(points, (_, number) => grid.sets.find(number));
}

interface Grid {
  readonly points: readonly Point[];
  readonly sets: DisjointSets;
  readonly tolerance: number;
  /** The last fine cell of each coarse one, by its first point, and the one before it. */
  readonly lastInCoarse: Map<number, number>;
  readonly before: Int32Array;
  /** The other points of a fine cell. */
  readonly nextInFine: Int32Array;
}

/** One near point in each fine cell is enough, and none where the cell's place is the point's own already. */
function uniteInCell(grid: Grid, key: number, number: number): void {
  const { points, sets, tolerance, before, nextInFine } = grid;
  const { x, y } = itemAt(points, number);
  const reach = 2 * tolerance;
  for (let first = grid.lastInCoarse.get(key) ?? -1; first >= 0; first = itemAt(before, first)) {
    const head = itemAt(points, first);
    // Further from the cell's first point than this, the point is out of reach of all of them.
    if (Math.abs(head.x - x) > reach || Math.abs(head.y - y) > reach) continue;
    if (sets.find(first) === sets.find(number)) continue;
    let other = first;
    while (other >= 0 && !isWithin(itemAt(points, other), x, y, tolerance)) other = itemAt(nextInFine, other);
    if (other >= 0) sets.unite(other, number);
  }
}

function isWithin(point: Point, x: number, y: number, tolerance: number): boolean {
  const offX = point.x - x;
  const offY = point.y - y;
  return offX * offX + offY * offY <= tolerance * tolerance;
}

/** A point that is its cell's first one again, as ends of neighbours are, adds nothing to it. */
function addToCell(grid: Grid, key: number, number: number): void {
  const { points, lastInCoarse, before, nextInFine } = grid;
  const { x, y } = itemAt(points, number);
  const fine = grid.tolerance / FINE;
  const [cellX, cellY] = [Math.floor(x / fine), Math.floor(y / fine)];
  const last = lastInCoarse.get(key) ?? -1;
  for (let first = last; first >= 0; first = itemAt(before, first)) {
    const head = itemAt(points, first);
    if (head.x === x && head.y === y) return;
    if (Math.floor(head.x / fine) !== cellX || Math.floor(head.y / fine) !== cellY) continue;
    nextInFine[number] = itemAt(nextInFine, first);
    nextInFine[first] = number;
    return;
  }
  before[number] = last;
  lastInCoarse.set(key, number);
}

/** Two cells may share a key: that costs a distance, never a wrong answer. The factors are large primes. */
function cellKey(x: number, y: number): number {
  return (Math.imul(x | 0, 73_856_093) ^ Math.imul(y | 0, 19_349_663)) | 0;
}

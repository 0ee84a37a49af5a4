/**
 * Points that are one place. Nearness is made transitive: a chain of points, each within the tolerance of the next, is
 * one place, so that the answer does not depend on the order of the points. A hash grid keeps the cost linear.
 */
import { itemAt } from './assert.ts';
import { disjointSets } from './disjoint-sets.ts';
import { distance, type Point } from './point.ts';

/** Cells this many tolerances wide hold few points each, and few points lie near a cell's edge. */
const CELL = 64;

/** For each point the smallest number of a point at the same place. */
export function mergePoints(points: readonly Point[], tolerance: number): Int32Array {
  const sets = disjointSets(points.length);
  const cell = CELL * tolerance;
  const lastInCell = new Map<number, number>();
  const before = new Int32Array(points.length).fill(-1);
  points.forEach((point, number) => {
    const lowX = Math.floor((point.x - tolerance) / cell);
    const highX = Math.floor((point.x + tolerance) / cell);
    const lowY = Math.floor((point.y - tolerance) / cell);
    const highY = Math.floor((point.y + tolerance) / cell);
    for (let x = lowX; x <= highX; x++) {
      for (let y = lowY; y <= highY; y++) {
        let other = lastInCell.get(cellKey(x, y)) ?? -1;
        while (other >= 0) {
          if (distance(itemAt(points, other), point) <= tolerance) sets.unite(other, number);
          other = itemAt(before, other);
        }
      }
    }
    const home = cellKey(Math.floor(point.x / cell), Math.floor(point.y / cell));
    before[number] = lastInCell.get(home) ?? -1;
    lastInCell.set(home, number);
  });
  return Int32Array.from(points, (_, number) => sets.find(number));
}

/** Two cells may share a key: that costs a distance, never a wrong answer. The factors are large primes. */
function cellKey(x: number, y: number): number {
  return (Math.imul(x | 0, 73_856_093) ^ Math.imul(y | 0, 19_349_663)) | 0;
}

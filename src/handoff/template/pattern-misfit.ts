/**
 * How far off a pattern of holes lies in the best of all wrong ways to lay it: turned, mirrored, moved, any hole on any pin. A way that brings
 * each hole within a of some other's place keeps all distances between holes within 2 a, so half the least of the greatest differences
 * of distances over all other orders of the holes is a bound from below.
 * Cost: a search over orders that is cut off where a distance is off by more than the best so far.
 */
import { itemAt } from '#geometry/assert.ts';
import { distance, type Point } from '#geometry/point.ts';

/** mm that no wrong way comes nearer than, at one hole at least; zero for fewer than three holes. */
export function patternMisfit(holes: readonly Point[]): number {
  const count = holes.length;
  if (count < 3) return 0;
  const gaps = holes.map((a) => holes.map((b) => distance(a, b)));
  let least = Number.POSITIVE_INFINITY;
  const order: number[] = [];
  const search = (worst: number): void => {
    if (worst >= least) return;
    const place = order.length;
    if (place === count) {
      if (order.some((each, index) => each !== index)) least = worst;
      return;
    }
    for (let next = 0; next < count; next++) {
      if (order.includes(next)) continue;
      const off = order.reduce(
        (most, each, index) =>
          Math.max(most, Math.abs(itemAt(itemAt(gaps, index), place) - itemAt(itemAt(gaps, each), next))),
        worst,
      );
      order.push(next);
      search(off);
      order.pop();
    }
  };
  search(0);
  return least / 2;
}

/** The gap between two border spans: exact, for spans that do not cross. */
import { hypot } from '#maths/hypot.ts';
import { type Feature, squaredDistance } from './front-features.ts';

/** mm between two features; 0 is returned only where an end of one lies on the other, so crossings must be known otherwise. */
export function featureGap(a: Feature, b: Feature): number {
  return Math.sqrt(Math.min(leastFrom(a, b), leastFrom(b, a)));
}

/**
 * Least squared distance to `to` from the points of `from` where the gap can be least: its ends, and, where it is an arc,
 * where its radius points along the line between its centre and the other's, or across the other line.
 */
function leastFrom(from: Feature, to: Feature): number {
  let least = Math.min(squaredDistance(to, from.ax, from.ay), squaredDistance(to, from.bx, from.by));
  if (from.kind !== 'arc') return least;
  let dx = to.nx;
  let dy = to.ny;
  if (to.kind === 'arc') {
    dx = to.cx - from.cx;
    dy = to.cy - from.cy;
    const far = hypot(dx, dy);
    if (far === 0) return least;
    dx /= far;
    dy /= far;
  }
  for (const side of [-1, 1]) {
    const ux = dx * side;
    const uy = dy * side;
    if (ux * from.nx + uy * from.ny < from.cosHalf) continue;
    least = Math.min(least, squaredDistance(to, from.cx + ux * from.radius, from.cy + uy * from.radius));
  }
  return least;
}

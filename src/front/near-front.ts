/** Whether a place in the metal lies on the front, to a tolerance in any direction. */
import type { Point } from '#geometry/point.ts';

/** Eight ways, nearly as long as each other. */
const WAYS = [
  [1, 0],
  [0.7, 0.7],
  [0, 1],
  [-0.7, 0.7],
  [-1, 0],
  [-0.7, -0.7],
  [0, -1],
  [0.7, -0.7],
] as const;

/**
 * Whether the front passes a place at a height within the tolerance: up and down, or on a steep wall beside it.
 * @param heightAt height of the front at a place, mm
 */
export function isNearFront(
  heightAt: (x: number, y: number) => number,
  { x, y }: Point,
  { height, tolerance }: { height: number; tolerance: number },
): boolean {
  let low = heightAt(x, y);
  if (Math.abs(low - height) <= tolerance) return true;
  let high = low;
  // As far up or down again: at most the tolerance in all.
  const reach = 0.7 * tolerance;
  for (const [u, v] of WAYS) {
    const front = heightAt(x + u * reach, y + v * reach);
    low = Math.min(low, front);
    high = Math.max(high, front);
    if (height >= low - reach && height <= high + reach) return true;
  }
  return false;
}

/** A taper's value at a place: even between its two ends, held beyond them. */
import { dot, type Point, subtract } from '#geometry/point.ts';
import type { Taper } from '#part/job.ts';

export function taperAt({ from, to, fromValue, toValue }: Taper, at: Point): number {
  const way = subtract(to, from);
  const share = dot(subtract(at, from), way) / dot(way, way);
  return fromValue + (toValue - fromValue) * Math.min(1, Math.max(0, share));
}

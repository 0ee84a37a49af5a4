/**
 * A block of metal etched from above through openings that are bared one after another, by first arrival on a grid.
 * Sideways the etch runs φ times as fast as down; dividing plan lengths by φ makes it one speed. Times are reported as the
 * depth that one bath would cut in them, so that speed is 1.
 */
import { depthsReached, firstArrival } from './first-arrival.ts';

/** A rectangle bared at `since`; extents may be infinite, which is how a long strip is reported. */
export interface Bared {
  readonly minX: number;
  readonly maxX: number;
  readonly minY: number;
  readonly maxY: number;
  readonly since: number;
}

export interface EtchedBlock {
  /** Plan coordinates and depths by column. */
  readonly places: readonly { readonly x: number; readonly y: number }[];
  readonly depths: Float64Array;
}

/** Within this many millimetres of an opening's edge, where the fan of directions is too sharp for a grid, distances to the edge are given. */
const FAN = 0.25;

/** Etches until the time `until`. A block one node wide in y is a section. */
export function etchBlock(
  block: { width: number; breadth: number; depth: number; factor: number; spacing: number },
  bared: readonly Bared[],
  until: number,
): EtchedBlock {
  const { width, breadth, depth, factor, spacing } = block;
  const nodesAlong = (length: number): number => Math.round(length / factor / spacing) + 1;
  const size = [nodesAlong(width), nodesAlong(breadth), Math.round(depth / spacing) + 1] as const;
  const margin = until + 3 * spacing;
  const seed = (x: number, y: number, down: number): number => {
    if (down > FAN) return Number.POSITIVE_INFINITY;
    let soonest = Number.POSITIVE_INFINITY;
    for (const { minX, maxX, minY, maxY, since } of bared) {
      const besideX = Math.max(minX / factor - x, 0, x - maxX / factor);
      const besideY = Math.max(minY / factor - y, 0, y - maxY / factor);
      const away = Math.hypot(besideX, besideY, down);
      if (away === 0 || (away <= FAN && Math.hypot(besideX, besideY) > 0))
        soonest = Math.min(soonest, since + away);
    }
    return soonest;
  };
  const grid = firstArrival({ size, spacing, until: margin }, seed);
  const places = Array.from({ length: size[0] * size[1] }, (_, column) => ({
    x: (column % size[0]) * spacing * factor,
    y: Math.floor(column / size[0]) * spacing * factor,
  }));
  return { places, depths: depthsReached(grid, until) };
}

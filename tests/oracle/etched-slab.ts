/**
 * A slab etched from both faces at once, by first arrival on a grid through its whole thickness: etch that comes from one side goes on
 * into whatever the other has left. Plan lengths are divided by φ, times are reported as depths of one bath.
 */
import { firstArrival } from './first-arrival.ts';

/** A long strip bared at `since` on one face. */
export interface BaredStrip {
  readonly from: number;
  readonly to: number;
  readonly since: number;
}

export interface SlabColumn {
  readonly x: number;
  /** Reached from either face, where metal is left between. */
  readonly near: number;
  readonly far: number;
  /** Metal left, 0 where the etches have met. */
  readonly left: number;
}

/** Within this of a strip's edge, where the fan of directions is too sharp for a grid, distances to the edge are given, mm. */
const FAN = 0.25;

export function etchSlab(
  slab: {
    readonly width: number;
    readonly thickness: number;
    readonly factor: number;
    readonly spacing: number;
  },
  bared: { readonly near: readonly BaredStrip[]; readonly far: readonly BaredStrip[] },
  until: number,
): SlabColumn[] {
  const { width, thickness, factor, spacing } = slab;
  const columns = Math.round(width / factor / spacing) + 1;
  const layers = Math.round(thickness / spacing) + 1;
  const fromFace = (strips: readonly BaredStrip[], x: number, away: number): number => {
    let soonest = Number.POSITIVE_INFINITY;
    if (away > FAN) return soonest;
    for (const { from, to, since } of strips) {
      const beside = Math.max(from / factor - x, 0, x - to / factor);
      const distance = Math.hypot(beside, away);
      if (distance === 0 || (distance <= FAN && beside > 0)) soonest = Math.min(soonest, since + distance);
    }
    return soonest;
  };
  const { times } = firstArrival(
    { size: [columns, 1, layers], spacing, until: until + 3 * spacing },
    (x, _, down) =>
      Math.min(fromFace(bared.near, x, down), fromFace(bared.far, x, (layers - 1) * spacing - down)),
  );
  return Array.from({ length: columns }, (_, column) => {
    const reached = (from: (layer: number) => number): number => {
      let layer = 0;
      while (layer < layers && (times[column + from(layer) * columns] ?? 0) <= until) layer++;
      if (layer === 0) return 0;
      if (layer === layers) return thickness;
      const above = times[column + from(layer - 1) * columns] ?? 0;
      const below = times[column + from(layer) * columns] ?? Number.POSITIVE_INFINITY;
      return (layer - 1 + (Number.isFinite(below) ? (until - above) / (below - above) : 0)) * spacing;
    };
    const near = reached((layer) => layer);
    const far = reached((layer) => layers - 1 - layer);
    return { x: column * spacing * factor, near, far, left: Math.max(0, thickness - near - far) };
  });
}

/**
 * A block of metal etched from above stage by stage, each through windows in a coat of its own: all that is etched is coated
 * over, the windows are cut on the floor, and the etch runs on from there, in whatever metal is left and past no void.
 * Sideways the etch runs φ times as fast as down; dividing plan lengths by φ makes it one speed. Reported in depths cut.
 */
import { type ArrivalGrid, firstArrival } from './first-arrival.ts';

export interface Window {
  readonly minX: number;
  readonly maxX: number;
  readonly minY: number;
  readonly maxY: number;
}

/** Windows of a stage and how deep it cuts, a whole number of spacings. */
export interface CoatedStage {
  readonly windows: readonly Window[];
  readonly cut: number;
}

export interface RecoatedBlock {
  readonly places: readonly { readonly x: number; readonly y: number }[];
  /** How deep everything above is gone, by place. */
  readonly depths: Float64Array;
}

interface Block {
  readonly width: number;
  readonly breadth: number;
  readonly depth: number;
  readonly factor: number;
  readonly spacing: number;
}

/** Within this many millimetres of a window's edge, where the fan of directions is too sharp for a grid, distances to the edge are given. */
const FAN = 0.25;
/** A node reached this much before the end of a stage is void; one reached just then is the new surface. */
const SURFACE = 1e-6;

/** A block one node wide in y is a section. */
export function etchRecoated(block: Block, stages: readonly CoatedStage[]): RecoatedBlock {
  const { width, breadth, depth, factor, spacing } = block;
  const nodesAlong = (length: number): number => Math.round(length / factor / spacing) + 1;
  const size = [nodesAlong(width), nodesAlong(breadth), Math.round(depth / spacing) + 1] as const;
  const columns = size[0] * size[1];
  const gone = new Int8Array(columns * size[2]).fill(-1);
  const arrivals: { readonly grid: ArrivalGrid; readonly cut: number }[] = [];
  let floor = 0;
  for (const { windows, cut } of stages) {
    const seed = seedOf(windows, { floor, factor, spacing });
    const isVoid = (node: number): boolean => (gone[node] ?? -1) >= 0;
    const grid = firstArrival({ size, spacing, until: cut + 3 * spacing }, seed, isVoid);
    grid.times.forEach((time, node) => {
      if (time < cut - SURFACE) gone[node] = arrivals.length;
    });
    arrivals.push({ grid, cut });
    floor += cut;
  }
  const depths = Float64Array.from({ length: columns }, (_, column) => {
    let down = 0;
    while (down < size[2] && (gone[column + down * columns] ?? -1) >= 0) down++;
    const last = arrivals[gone[column + (down - 1) * columns] ?? -1];
    if (last === undefined) return 0;
    const above = last.grid.times[column + (down - 1) * columns] ?? 0;
    const below = last.grid.times[column + down * columns] ?? Number.POSITIVE_INFINITY;
    const share = Number.isFinite(below) ? Math.min(1, (last.cut - above) / (below - above)) : 0;
    return (down - 1 + share) * spacing;
  });
  const places = Array.from({ length: columns }, (_, column) => ({
    x: (column % size[0]) * spacing * factor,
    y: Math.floor(column / size[0]) * spacing * factor,
  }));
  return { places, depths };
}

/** Windows bare from the start of the stage, on the floor; metal beside and below them is reached by the way there. */
function seedOf(
  windows: readonly Window[],
  { floor, factor, spacing }: { readonly floor: number; readonly factor: number; readonly spacing: number },
): (x: number, y: number, down: number) => number {
  return (x, y, down) => {
    const below = down - floor;
    if (below < -spacing / 2 || below > FAN) return Number.POSITIVE_INFINITY;
    let soonest = Number.POSITIVE_INFINITY;
    for (const { minX, maxX, minY, maxY } of windows) {
      const besideX = Math.max(minX / factor - x, 0, x - maxX / factor);
      const besideY = Math.max(minY / factor - y, 0, y - maxY / factor);
      const away = Math.hypot(besideX, besideY, Math.max(0, below));
      if (away === 0 || (away <= FAN && Math.hypot(besideX, besideY) > 0)) soonest = Math.min(soonest, away);
    }
    return soonest;
  };
}

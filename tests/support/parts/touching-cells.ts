/** A made-up part for benchmarks and tests: one cluster of touching cells, each of another depth, all sizes different. */
import type { Loop } from '#geometry/span.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { lehmer } from '#support/seeds/lehmer.ts';

export interface TouchingCells {
  readonly sheet: Loop;
  readonly outlines: readonly Loop[];
  /** A point and a depth for every cell. */
  readonly depths: readonly (readonly [x: number, y: number, depth: number])[];
}

const LAND = 30;
const SHALLOWEST = 0.5;
const DEEPEST = 3;

/** As near a square of cells as `count` makes, with depths from 0.5 to 3 mm in an order that the seed decides. */
export function touchingCells(count: number, seed = 1): TouchingCells {
  const random = lehmer(seed * 7919 + count);
  const columns = Math.ceil(Math.sqrt(count * 1.7));
  const rows = Math.ceil(count / columns);
  const xs = edges(columns, 20, random);
  const ys = edges(rows, 22, random);
  const depths = Array.from({ length: count }, (_, i) => {
    const share = count === 1 ? 1 : i / (count - 1);
    return Math.round((SHALLOWEST + (DEEPEST - SHALLOWEST) * share) * 1e4) / 1e4;
  });
  for (let i = count - 1; i > 0; i--) {
    const other = Math.floor(random() * (i + 1));
    [depths[i], depths[other]] = [depths[other] ?? 0, depths[i] ?? 0];
  }
  const outlines: Loop[] = [];
  const asked = depths.map((depth, i) => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    const [left, right, low, high] = [xs[column], xs[column + 1], ys[row], ys[row + 1]].map((at) => at ?? 0);
    outlines.push(rectangle(left ?? 0, low ?? 0, right ?? 0, high ?? 0));
    return [(left ?? 0) + 5, (low ?? 0) + 5, depth] as const;
  });
  const sheet = rectangle(0, 0, (xs.at(-1) ?? 0) + LAND, (ys.at(-1) ?? 0) + LAND);
  return { sheet, outlines, depths: asked };
}

function edges(count: number, least: number, random: () => number): number[] {
  const places = [LAND];
  for (let i = 0; i < count; i++) places.push((places[i] ?? 0) + least + Math.round(random() * 1500) / 100);
  return places;
}

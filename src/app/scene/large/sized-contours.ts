/**
 * Contours by size, the largest first: which of them are worth lines at a scale, which of those lie in a box, and where the others stand,
 * which are no more than dots. What it says of a scale it finds without looking at each; building costs n log n, once for a list.
 */
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpans } from '#geometry/box.ts';
import { type BoxIndex, indexBoxes } from '#geometry/box-index.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { Contour } from '#job/formats/plan-file.ts';

export interface SizedContours {
  /** Largest first. */
  readonly contours: readonly Contour[];
  /** Longer side of each contour's box, mm. */
  readonly sizes: Float32Array;
  /** Middle of each contour's box: x, y and 0 by turns. */
  readonly middles: Float32Array;
  readonly index: BoxIndex;
}

export function sizedContours(contours: readonly Contour[]): SizedContours {
  const all = contours.filter(({ vertices }) => vertices.length > 1);
  const boxes = all.map((contour) => boxOfSpans(pathOfContour(contour).spans));
  const sizes = boxes.map(longerSide);
  const order = Array.from(all, (_, number) => number).sort((a, b) => itemAt(sizes, b) - itemAt(sizes, a));
  const sorted = order.map((number) => itemAt(boxes, number));
  const middles = new Float32Array(3 * all.length);
  sorted.forEach(({ minX, minY, maxX, maxY }, at) => {
    middles[3 * at] = (minX + maxX) / 2;
    middles[3 * at + 1] = (minY + maxY) / 2;
  });
  return {
    contours: order.map((number) => itemAt(all, number)),
    sizes: Float32Array.from(order, (number) => itemAt(sizes, number)),
    middles,
    index: indexBoxes(sorted),
  };
}

/** How many contours are at least so large, mm. */
export function countFrom({ sizes }: Pick<SizedContours, 'sizes'>, least: number): number {
  let [low, high] = [0, sizes.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (itemAt(sizes, middle) >= least) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The contours of at least a size, mm, whose boxes meet a box, the largest first. */
export function contoursIn(sized: SizedContours, box: Box, least: number): Contour[] {
  const count = countFrom(sized, least);
  if (count === 0) return [];
  return sized.index
    .meeting(box)
    .filter((number) => number < count)
    .map((number) => itemAt(sized.contours, number));
}

/** Dots as they are drawn: middles, x, y and 0 by turns, and sizes, mm. */
export type DotArrays = Pick<SizedContours, 'middles' | 'sizes'>;

/** More cells than any sheet is wide or high. */
const CELLS_ACROSS = 2 ** 26;

/**
 * The contours smaller than a size as dots; of those smaller than half a cell, mm, all in one cell of the sheet are one dot that covers
 * as much as they do, where they are on the average. There are then no more of them than the cells that they lie in.
 */
export function dotsBelow({ sizes, middles }: DotArrays, below: number, cell: number): DotArrays {
  const [from, merged] = [countFrom({ sizes }, below), countFrom({ sizes }, Math.min(below, cell / 2))];
  const cells = new Map<number, { x: number; y: number; area: number }>();
  for (let number = merged; number < sizes.length; number++) {
    const [x, y] = [itemAt(middles, 3 * number), itemAt(middles, 3 * number + 1)];
    const area = itemAt(sizes, number) ** 2;
    const key = Math.floor(x / cell) * CELLS_ACROSS + Math.floor(y / cell);
    const held = cells.get(key);
    if (held === undefined) cells.set(key, { x: x * area, y: y * area, area });
    else {
      held.x += x * area;
      held.y += y * area;
      held.area += area;
    }
  }
  const made = {
    middles: new Float32Array(3 * (merged - from + cells.size)),
    sizes: new Float32Array(merged - from + cells.size),
  };
  made.middles.set(middles.subarray(3 * from, 3 * merged));
  made.sizes.set(sizes.subarray(from, merged));
  let at = merged - from;
  for (const { x, y, area } of cells.values()) {
    made.middles[3 * at] = x / area;
    made.middles[3 * at + 1] = y / area;
    made.sizes[at++] = Math.sqrt(area);
  }
  return made;
}

function longerSide({ minX, minY, maxX, maxY }: Box): number {
  return Math.max(maxX - minX, maxY - minY);
}

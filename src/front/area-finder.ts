/**
 * Which of many areas side by side, such as a part's regions, holds a place, and which ones a straight cut runs through.
 * Boxes first, exact borders where a box says maybe. On a border, to rounding, either neighbour may come out.
 */

import Flatbush from 'flatbush';
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans } from '#geometry/box.ts';
import { isInsideLoops } from '#geometry/inside-loops.ts';
import type { Point } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import { hypot } from '#maths/hypot.ts';
import { loopFeatures } from './front-features.ts';
import { crossingsOf } from './line-crossings.ts';
import { spreadFeature } from './spread.ts';

/** A part of a cut that lies in one area. */
export interface Stretch {
  /** Distances along the cut, mm. */
  readonly start: number;
  readonly end: number;
  /** Index of the area; -1 for none. */
  readonly area: number;
}

export interface AreaFinder {
  readonly at: (x: number, y: number) => number;
  /** Stretches from one end of the cut to the other, without gaps. */
  readonly along: (from: Point, to: Point) => Stretch[];
}

/** mm along a cut; crossings nearer than this are one. */
const SHARP = 1e-7;

/** Each area is its outer loop and its holes. */
export function makeAreaFinder(areas: readonly (readonly Loop[])[]): AreaFinder {
  const tree = treeOf(areas);
  const at = (x: number, y: number): number => {
    let found = -1;
    tree?.search(x, y, x, y, (i) => {
      if (found < 0 && isInsideLoops(itemAt(areas, i), { x, y })) found = i;
      return false;
    });
    return found;
  };
  const along = (from: Point, to: Point): Stretch[] => {
    const length = hypot(to.x - from.x, to.y - from.y);
    const crossings = [0, length];
    const box = [
      Math.min(from.x, to.x),
      Math.min(from.y, to.y),
      Math.max(from.x, to.x),
      Math.max(from.y, to.y),
    ];
    for (const i of tree?.search(itemAt(box, 0), itemAt(box, 1), itemAt(box, 2), itemAt(box, 3)) ?? []) {
      for (const feature of loopFeatures(itemAt(areas, i), -1)) {
        const border = spreadFeature(feature, 0);
        if (border !== undefined) crossings.push(...crossingsOf(border, from, to));
      }
    }
    crossings.sort((a, b) => a - b);
    const stretches: Stretch[] = [];
    for (let i = 0; i + 1 < crossings.length; i++) {
      const [start, end] = [itemAt(crossings, i), itemAt(crossings, i + 1)];
      if (end - start <= SHARP) continue;
      const share = (start + end) / 2 / length;
      const area = at(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share);
      const last = stretches.at(-1);
      if (last?.area === area) stretches[stretches.length - 1] = { ...last, end };
      else stretches.push({ start: last?.end ?? 0, end, area });
    }
    return stretches;
  };
  return { at, along };
}

function treeOf(areas: readonly (readonly Loop[])[]): Flatbush | undefined {
  if (areas.length === 0) return undefined;
  const tree = new Flatbush(areas.length);
  for (const loops of areas) {
    const { minX, minY, maxX, maxY } = boxOfSpans(loops.flat());
    tree.add(minX, minY, maxX, maxY);
  }
  tree.finish();
  return tree;
}

/**
 * Which region holds a place, among however many: regions are found by their boxes. Built once for a plan's shapes, when first asked, and
 * kept as long as they live.
 */
import { itemAt } from '#geometry/assert.ts';
import { type BoxIndex, indexBoxes } from '#geometry/box-index.ts';
import type { Point } from '#geometry/point.ts';
import { type RegionShape, shapeHolds } from './region-shape.ts';

interface ShapeFinder {
  readonly index: BoxIndex;
  /** All that regions have, ascending, mm. */
  readonly levels: readonly number[];
}

const finders = new WeakMap<readonly RegionShape[], ShapeFinder>();

/** The first of the regions that holds a point. */
export function shapeAt(shapes: readonly RegionShape[], point: Point): RegionShape | undefined {
  const found: number[] = [];
  finderOf(shapes).index.around(point.x, point.y, (number) => found.push(number));
  const number = found.sort((a, b) => a - b).find((each) => shapeHolds(itemAt(shapes, each), point));
  return number === undefined ? undefined : itemAt(shapes, number);
}

/** Levels that regions have, ascending, mm. */
export function levelsIn(shapes: readonly RegionShape[]): readonly number[] {
  return finderOf(shapes).levels;
}

function finderOf(shapes: readonly RegionShape[]): ShapeFinder {
  const known = finders.get(shapes);
  if (known !== undefined) return known;
  const made = {
    index: indexBoxes(shapes.map(({ box }) => box)),
    levels: [...new Set(shapes.map(({ region }) => region.level))].sort((a, b) => a - b),
  };
  finders.set(shapes, made);
  return made;
}

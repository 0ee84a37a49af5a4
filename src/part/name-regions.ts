/**
 * Names of regions: `R01`, `R02` and so on down the drawing and then across, by centroid, and where centroids agree by area. Neither
 * depths nor the way a shape is drawn change them: not the order of entities, nor where a border is cut, nor where the part lies.
 */

import { centroidOf } from '#geometry/loops/centroid.ts';
import { groupNear } from '#geometry/near-values.ts';
import type { Point } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import { ALIGNED, SAME_SHARE } from '#geometry/tolerances.ts';
import type { RegionId } from './part.ts';

interface Shape {
  readonly area: number;
  readonly loops: readonly Loop[];
}

interface Placed<Item extends Shape> {
  readonly item: Item;
  readonly center: Point;
}

/** The regions in the order of their names, which begin with the letter of their face. */
export function nameRegions<Item extends Shape>(
  found: readonly Item[],
  letter = 'R',
): (Item & { readonly id: RegionId })[] {
  const placed = found.map((item): Placed<Item> => ({ item, center: centroidOf(item.loops) }));
  const rows = groupNear(placed, ({ center }) => -center.y, ALIGNED);
  const ordered = rows.flatMap((row) =>
    groupNear(row, ({ center }) => center.x, ALIGNED).flatMap((column) =>
      groupNear(column, ({ item }) => -item.area, SAME_SHARE * greatestArea(column)).flat(),
    ),
  );
  const width = Math.max(2, String(ordered.length).length);
  return ordered.map(({ item }, i) => ({ ...item, id: `${letter}${String(i + 1).padStart(width, '0')}` }));
}

function greatestArea<Item extends Shape>(column: readonly Placed<Item>[]): number {
  return column.reduce((most, { item }) => Math.max(most, item.area), 0);
}

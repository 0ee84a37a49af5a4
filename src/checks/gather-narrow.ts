/**
 * Keeps narrow places from burying each other: the narrowest first, a region reported once for each rule unless it also narrows
 * a region that has not been reported, and places with the same figures in one finding. Places equally narrow count as one
 * step, so that rounding does not decide which of them is reported.
 */

import { itemAt } from '#geometry/assert.ts';
import { boxOfPoints, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { disjointSets } from '#geometry/disjoint-sets.ts';
import { groupNear } from '#geometry/near-values.ts';
import { distance, type Point } from '#geometry/point.ts';
import type { Path } from '#geometry/span.ts';
import { SAME_BORDER, SAME_WIDTH } from '#geometry/tolerances.ts';
import type { RegionId } from '#part/part.ts';

export interface NarrowFound {
  readonly width: number;
  readonly limit: number;
  readonly at: Point;
  readonly regions: readonly RegionId[];
  readonly outline: readonly Path[];
  /** Further figures that distinguish places of one width, such as stages. */
  readonly figures?: readonly number[];
}

export interface NarrowGroup<Found extends NarrowFound> {
  /** The one that stands for all. */
  readonly first: Found;
  readonly places: number;
  readonly regions: readonly RegionId[];
  readonly outline: readonly Path[];
}

/** Outlines worth handing on in one finding. */
const MOST_OUTLINES = 50;

export function gatherNarrow<Found extends NarrowFound>(found: readonly Found[]): NarrowGroup<Found>[] {
  const reported = new Set<RegionId>();
  return groupNear(found, ({ width }) => width, SAME_WIDTH).flatMap((step) => {
    const fresh = step.filter(
      ({ regions }) => regions.length === 0 || !regions.every((region) => reported.has(region)),
    );
    for (const { regions } of fresh) for (const region of regions) reported.add(region);
    return sameFigures(fresh, 0).map(groupOf);
  });
}

/**
 * Places as an engineer counts them: ways across nearer to each other than the limit, one after the other along a strip, are one,
 * into however many lines and arcs the strip's sides fall.
 */
function distinctPlaces(places: readonly NarrowFound[]): number {
  const index = indexBoxes(places.map(({ at, limit }) => growBox(boxOfPoints([at]), limit + SAME_BORDER)));
  const sets = disjointSets(places.length);
  places.forEach(({ at, limit }, i) => {
    // Drawings in whole millimetres have places just a limit apart.
    for (const other of index.meeting(boxOfPoints([at])))
      if (distance(itemAt(places, other).at, at) <= limit + SAME_BORDER) sets.unite(i, other);
  });
  return new Set(places.map((_, i) => sets.find(i))).size;
}

/** Places of one width by their limits and further figures, one after the other. */
function sameFigures<Found extends NarrowFound>(places: readonly Found[], figure: number): Found[][] {
  const all = ({ limit, figures = [] }: Found) => [limit, ...figures];
  const [first] = places;
  if (first === undefined) return [];
  if (figure >= all(first).length) return [[...places]];
  const groups = groupNear(places, (place) => itemAt(all(place), figure), SAME_WIDTH);
  return groups.flatMap((group) => sameFigures(group, figure + 1));
}

function groupOf<Found extends NarrowFound>(places: readonly Found[]): NarrowGroup<Found> {
  const inOrder = [...places].sort((a, b) => a.at.y - b.at.y || a.at.x - b.at.x);
  return {
    first: itemAt(inOrder, 0),
    places: distinctPlaces(inOrder),
    regions: [...new Set(inOrder.flatMap(({ regions }) => regions))].sort(),
    outline: inOrder.flatMap(({ outline }) => outline).slice(0, MOST_OUTLINES),
  };
}

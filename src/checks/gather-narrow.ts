/**
 * Keeps narrow places from burying each other: the narrowest first, a region told once for each rule unless it also narrows
 * a region that has not been told, and places with the same figures in one finding.
 */
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import type { Path } from '#geometry/span.ts';
import type { RegionId } from '#part/part.ts';

export interface NarrowFound {
  readonly width: number;
  readonly limit: number;
  readonly at: Point;
  readonly regions: readonly RegionId[];
  readonly outline: readonly Path[];
}

export interface NarrowGroup<Found extends NarrowFound> {
  /** The one that stands for all. */
  readonly first: Found;
  readonly places: number;
  readonly regions: readonly RegionId[];
  readonly outline: readonly Path[];
}

/** Figures closer than this are the same, mm: finer than any gauge. */
const SAME_FIGURE = 0.001;
/** Outlines worth handing on in one finding. */
const MOST_OUTLINES = 50;

export function gatherNarrow<Found extends NarrowFound>(found: readonly Found[]): NarrowGroup<Found>[] {
  const told = new Set<RegionId>();
  const groups = new Map<string, Found[]>();
  for (const each of [...found].sort(byWidthThenPlace)) {
    if (each.regions.length > 0 && each.regions.every((region) => told.has(region))) continue;
    for (const region of each.regions) told.add(region);
    const key = [each.width, each.limit].map((value) => Math.round(value / SAME_FIGURE)).join(' ');
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [each]);
    else group.push(each);
  }
  return [...groups.values()].map((group) => ({
    first: itemAt(group, 0),
    places: group.length,
    regions: [...new Set(group.flatMap(({ regions }) => regions))].sort(),
    outline: group.flatMap(({ outline }) => outline).slice(0, MOST_OUTLINES),
  }));
}

/** Widths that differ by rounding only are told in the order of their places. */
function byWidthThenPlace(a: NarrowFound, b: NarrowFound): number {
  const steps = Math.round(a.width / SAME_FIGURE) - Math.round(b.width / SAME_FIGURE);
  return steps || a.at.y - b.at.y || a.at.x - b.at.x;
}

/** Finds the region that holds a point, or says that the point lies on a line. */
import { locateAreas } from '#geometry/loops/area-locator.ts';
import type { Point } from '#geometry/point.ts';
import { SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import type { Part, Region, RegionId } from './part.ts';

export type RegionAt = (point: Point) => Region | 'on-line' | undefined;

/** Costs as much as a look at every line of the part: keep it as long as the part. */
export function regionFinder({ regions }: Part): RegionAt {
  const { at, bordering } = locateAreas(regions.map(({ loops }) => loops));
  return (point) => (bordering(point, SCRIBE_ACCURACY).length > 0 ? 'on-line' : regions[at(point)]);
}

/** The same, by its id alone; undefined on a line. */
export function regionIdFinder(part: Part): (point: Point) => RegionId | undefined {
  const regionAt = regionFinder(part);
  return (point) => {
    const region = regionAt(point);
    return typeof region === 'object' ? region.id : undefined;
  };
}

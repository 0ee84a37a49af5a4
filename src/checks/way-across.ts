/** The shortest way across a narrow place: what lies beside it, what runs along it. */

import type { Point } from '#geometry/point.ts';
import { lineSpan, type Path } from '#geometry/span.ts';
import { BEYOND_ENDS, JUST_BESIDE } from '#geometry/tolerances.ts';
import type { RegionId } from '#part/part.ts';
import type { MakingPlace } from './making.ts';
import type { NarrowPlace } from './narrow-places.ts';

/** The regions just beyond both ends of the way, or on it where `beyond` is 0 or less; land where nothing else is there. */
export function regionsBeside({ around }: MakingPlace, place: NarrowPlace, beyond = BEYOND_ENDS): RegionId[] {
  const share = beyond / place.width;
  const ends = [pointOn(place, -share), pointOn(place, 1 + share)];
  const regions = ends.flatMap((end) => around.regionsAt(end));
  return [...new Set(regions.map(({ id }) => id))].sort();
}

/** The point at a share of the way; shares under 0 and over 1 lie beyond its ends. */
export function pointOn({ from, to }: NarrowPlace, share: number): Point {
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}

/** Whether all of the way lies in something, on both sides of it, as far as three places show. */
export function isAllIn(place: NarrowPlace, isIn: (point: Point) => boolean): boolean {
  const { from, to, width } = place;
  const aside = { x: (-(to.y - from.y) / width) * JUST_BESIDE, y: ((to.x - from.x) / width) * JUST_BESIDE };
  return [0.25, 0.5, 0.75].every((share) => {
    const { x, y } = pointOn(place, share);
    return [-1, 1].every((side) => isIn({ x: x + side * aside.x, y: y + side * aside.y }));
  });
}

export function wayPath({ from, to }: NarrowPlace): Path {
  return { closed: false, spans: [lineSpan(from, to)] };
}

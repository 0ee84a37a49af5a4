/** Which of many areas side by side, such as a part's regions, holds a place, and which ones a straight cut runs through. */

import { offsetFeature } from '#front/contours/offset-curve.ts';
import { loopFeatures } from '#front/front-features.ts';
import { itemAt } from '#geometry/assert.ts';
import { boxOfPoints } from '#geometry/box.ts';
import { type AreaLocator, locateAreas } from '#geometry/loops/area-locator.ts';
import { distance, type Point } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import { SAME_CROSSING } from '#geometry/tolerances.ts';
import { crossingsOf } from './line-crossings.ts';

/** A part of a cut that lies in one area. */
export interface Stretch {
  /** Distances along the cut, mm. */
  readonly start: number;
  readonly end: number;
  /** Index of the area; -1 for none. */
  readonly area: number;
}

export interface AreaFinder extends Pick<AreaLocator, 'at'> {
  /** Stretches from one end of the cut to the other, without gaps. */
  readonly along: (from: Point, to: Point) => Stretch[];
}

/** Each area is its outer loop and its holes. */
export function makeAreaFinder(areas: readonly (readonly Loop[])[]): AreaFinder {
  const { at, meeting } = locateAreas(areas);
  const along = (from: Point, to: Point): Stretch[] => {
    const length = distance(from, to);
    const crossings = [0, length];
    for (const area of meeting(boxOfPoints([from, to]))) {
      for (const feature of loopFeatures(itemAt(areas, area), -1)) {
        const border = offsetFeature(feature, 0);
        if (border !== undefined) crossings.push(...crossingsOf(border, from, to));
      }
    }
    crossings.sort((a, b) => a - b);
    const stretches: Stretch[] = [];
    for (let i = 0; i + 1 < crossings.length; i++) {
      const [start, end] = [itemAt(crossings, i), itemAt(crossings, i + 1)];
      if (end - start <= SAME_CROSSING) continue;
      const share = (start + end) / 2 / length;
      const area = at({ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share });
      const last = stretches.at(-1);
      if (last?.area === area) stretches[stretches.length - 1] = { ...last, end };
      else stretches.push({ start: last?.end ?? 0, end, area });
    }
    return stretches;
  };
  return { at, along };
}

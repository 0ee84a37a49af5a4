/**
 * Which of many areas side by side, such as the faces of an arrangement or the regions of a part, holds a point, and which come to
 * it. Boxes first, exact borders where a box says maybe; what costs much to look through is indexed when first asked about.
 */
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfPoints, boxOfSpan, boxOfSpans, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, type Loop, type Span } from '#geometry/span.ts';
import { type InsideIndex, isInside, makeInsideIndex } from './inside-index.ts';
import { isInsideLoops } from './inside-loops.ts';

export interface AreaLocator {
  /** Number of the area that holds the point; on a border, to rounding, either neighbour. -1 where none does. */
  readonly at: (point: Point) => number;
  /** Numbers of the areas with a border within `clearance` (mm) of the point, ascending. */
  readonly bordering: (point: Point, clearance: number) => number[];
  /** Numbers of the areas whose boxes meet a box, ascending. */
  readonly meeting: (box: Box) => number[];
}

/** Land round hundreds of pockets has thousands of spans: such borders are worth an index of their own. */
const MANY_SPANS = 64;

/** Each area is its outer loop and its holes; they do not overlap. */
export function locateAreas(areas: readonly (readonly Loop[])[]): AreaLocator {
  const counts = areas.map((loops) => loops.reduce((sum, loop) => sum + loop.length, 0));
  const { meeting } = indexBoxes(areas.map((loops) => boxOfSpans(loops.flat())));
  const indices: (InsideIndex | undefined)[] = [];
  const holds = (area: number, point: Point): boolean => {
    const loops = itemAt(areas, area);
    if (itemAt(counts, area) < MANY_SPANS) return isInsideLoops(loops, point);
    const index = indices[area] ?? makeInsideIndex(loops);
    indices[area] = index;
    return isInside(index, point.x, point.y);
  };
  let bordering: AreaLocator['bordering'] | undefined;
  return {
    at: (point) => {
      const boxed = meeting(boxOfPoints([point])).sort((a, b) => itemAt(counts, a) - itemAt(counts, b));
      return boxed.find((area) => holds(area, point)) ?? -1;
    },
    bordering: (point, clearance) => {
      bordering ??= borderFinder(areas);
      return bordering(point, clearance);
    },
    meeting,
  };
}

function borderFinder(areas: readonly (readonly Loop[])[]): AreaLocator['bordering'] {
  const owners: number[] = [];
  const spans: Span[] = [];
  areas.forEach((loops, area) => {
    for (const span of loops.flat()) {
      owners.push(area);
      spans.push(span);
    }
  });
  const index = indexBoxes(spans.map(boxOfSpan));
  return (point, clearance) => {
    const near = index
      .meeting(growBox(boxOfPoints([point]), clearance))
      .filter((each) => distanceToSpan(itemAt(spans, each), point) <= clearance);
    return [...new Set(near.map((each) => itemAt(owners, each)))];
  };
}

/** Finds the region that holds a point. Built once for a part: boxes first, exact borders only where a box says maybe. */
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpan, boxOfSpans, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { isInsideLoops } from '#geometry/inside-loops.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan } from '#geometry/span.ts';
import type { Part, Region } from './part.ts';

/** A point nearer to a line than this names no region, mm: scribe lines themselves may lie this far from the exact ones. */
export const LEAST_CLEARANCE = 0.005;

export type RegionAt = (point: Point) => Region | 'on-line' | undefined;

/** Costs as much as a look at every line of the part: keep it as long as the part. */
export function regionFinder({ regions }: Part): RegionAt {
  const boxed = regions.map((region) => ({ region, box: boxOfSpans(region.loops[0] ?? []) }));
  const spans = regions.flatMap(({ loops }) => loops.flat());
  const lines = indexBoxes(spans.map((span) => growBox(boxOfSpan(span), LEAST_CLEARANCE)));
  return (point) => {
    const { x, y } = point;
    const near = lines.meeting({ minX: x, minY: y, maxX: x, maxY: y });
    if (near.some((line) => distanceToSpan(itemAt(spans, line), point) < LEAST_CLEARANCE)) {
      return 'on-line';
    }
    return boxed.find(({ region, box }) => isInBox(box, point) && isInsideLoops(region.loops, point))?.region;
  };
}

function isInBox(box: Box, { x, y }: Point): boolean {
  return x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;
}

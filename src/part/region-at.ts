/** Finds the region that holds a point. Built once for a part: boxes first, exact borders only where a box says maybe. */
import { type Box, boxOfSpans } from '#geometry/box.ts';
import { isInsideLoops } from '#geometry/inside-loops.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan } from '#geometry/span.ts';
import type { Part, Region } from './part.ts';

/** A point nearer to a line than this names no region, mm: scribe lines themselves may lie this far from the exact ones. */
export const LEAST_CLEARANCE = 0.005;

export type RegionAt = (point: Point) => Region | 'on-line' | undefined;

export function regionFinder(part: Part): RegionAt {
  const boxed = part.regions.map((region) => ({ region, box: boxOfSpans(region.loops[0] ?? []) }));
  return (point) => {
    const near = boxed.filter(({ box }) => isNearBox(box, point)).map(({ region }) => region);
    if (near.some((region) => isOnBorder(region, point))) return 'on-line';
    return near.find((region) => isInsideLoops(region.loops, point));
  };
}

function isNearBox(box: Box, { x, y }: Point): boolean {
  return (
    x >= box.minX - LEAST_CLEARANCE &&
    x <= box.maxX + LEAST_CLEARANCE &&
    y >= box.minY - LEAST_CLEARANCE &&
    y <= box.maxY + LEAST_CLEARANCE
  );
}

function isOnBorder(region: Region, point: Point): boolean {
  return region.loops.some((loop) => loop.some((span) => distanceToSpan(span, point) < LEAST_CLEARANCE));
}

/** Which region is seen at a pixel, or lies in a box of pixels. */
import { type RegionShape, shapeHolds } from '#app/state/region-shape.ts';
import type { Point } from '#geometry/point.ts';
import { pixelOf, pointSeenAt, type ViewPose, type ViewSize } from './view-pose.ts';

/** Floors are looked through to from the surface down; three steps settle all but walls seen edge on. */
const STEPS = 4;

export interface Seen {
  readonly pose: ViewPose;
  readonly size: ViewSize;
  /** Height exaggeration; 0 where everything is drawn at the surface. */
  readonly exaggeration: number;
}

export interface Picked {
  readonly point: Point;
  readonly shape: RegionShape | undefined;
}

export function pickRegion(shapes: readonly RegionShape[], pixel: Point, seen: Seen): Picked {
  let picked: Picked = { point: pointSeenAt(seen.pose, seen.size, pixel), shape: undefined };
  let z = 0;
  for (let step = 0; step < STEPS; step++) {
    const point = pointSeenAt(seen.pose, seen.size, pixel, z);
    const shape = shapes.find((each) => shapeHolds(each, point));
    picked = { point, shape };
    const floor = -(shape?.region.level ?? 0) * seen.exaggeration;
    if (floor === z) break;
    z = floor;
  }
  return picked;
}

/** Regions that lie wholly in the box between two pixels. */
export function regionsInBox(
  shapes: readonly RegionShape[],
  from: Point,
  to: Point,
  seen: Seen,
): RegionShape[] {
  const [left, right] = [Math.min(from.x, to.x), Math.max(from.x, to.x)];
  const [top, bottom] = [Math.min(from.y, to.y), Math.max(from.y, to.y)];
  return shapes.filter((shape) =>
    shape.rings[0]?.every((point) => {
      const { x, y } = pixelOf(seen.pose, seen.size, point, -shape.region.level * seen.exaggeration);
      return x >= left && x <= right && y >= top && y <= bottom;
    }),
  );
}

/** Which region is seen at a pixel, or lies in a box of pixels. */
import type { RegionShape } from '#app/state/region-shape.ts';
import { levelsIn, shapeAt } from '#app/state/shape-finder.ts';
import type { Point } from '#geometry/point.ts';
import { pixelOf, pointSeenAt, type ViewPose, type ViewSize } from './view-pose.ts';

export interface Seen {
  readonly pose: ViewPose;
  readonly size: ViewSize;
  /** Height exaggeration; 0 where everything is drawn at the surface. */
  readonly exaggeration: number;
  /** Thickness of the sheet as drawn, where the far face is seen from below: it lies so deep, and its floors above it. */
  readonly below?: number | undefined;
  /** Along which the relief is cut open: what lies before it, seen from the viewer, is gone. */
  readonly cut?: CutPlane | undefined;
}

export interface CutPlane {
  readonly from: Point;
  readonly to: Point;
}

/** Whether the place lies on the viewer's side of the cut, where nothing is left. */
export function isCutAway({ from, to }: CutPlane, { azimuth }: ViewPose, { x, y }: Point): boolean {
  const side = (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);
  // The viewer stands at (sin azimuth, −cos azimuth) from what is seen.
  const viewer = (to.x - from.x) * -Math.cos(azimuth) - (to.y - from.y) * Math.sin(azimuth);
  return side * viewer > 0;
}

export interface Picked {
  readonly point: Point;
  readonly shape: RegionShape | undefined;
}

/** px by which the line of sight goes on from step to step: no narrower land between two pockets is looked for. */
const STEP = 1.5;

/** Depths of all floors, and between them so many that the line of sight jumps over no land on its way. */
function stepsDown(floors: readonly number[], { tilt, pixelsPerMm }: ViewPose): number[] {
  return floors.flatMap((floor, index) => {
    const before = floors[index - 1] ?? floor;
    const steps = Math.max(1, Math.ceil(((floor - before) * Math.abs(Math.tan(tilt)) * pixelsPerMm) / STEP));
    // The last of them is the floor itself, to the last bit: it is compared with.
    return Array.from({ length: steps }, (_, step) =>
      step === steps - 1 ? floor : before + ((floor - before) * (step + 1)) / steps,
    );
  });
}

/** Of a place so deep, as drawn, in the face on show. */
export function heightAt(depth: number, { below }: Pick<Seen, 'below'>): number {
  return below === undefined ? -depth : depth - below;
}

/** Follows the line of sight from the surface down to the first floor or wall. */
export function pickRegion(shapes: readonly RegionShape[], pixel: Point, seen: Seen): Picked {
  const heights = new Set([0, ...levelsIn(shapes).map((level) => level * seen.exaggeration)]);
  let passed: Picked = {
    point: pointSeenAt(seen.pose, seen.size, pixel, heightAt(0, seen)),
    shape: undefined,
  };
  let comesFromBefore = false;
  for (const below of stepsDown(
    [...heights].sort((a, b) => a - b),
    seen.pose,
  )) {
    const point = pointSeenAt(seen.pose, seen.size, pixel, heightAt(below, seen));
    if (seen.cut !== undefined && isCutAway(seen.cut, seen.pose, point)) {
      comesFromBefore = true;
      continue;
    }
    // Between before the cut and behind it stands its face.
    if (comesFromBefore) return { point, shape: undefined };
    const shape = shapeAt(shapes, point);
    const floor = (shape?.region.level ?? 0) * seen.exaggeration;
    if (shape !== undefined && floor === below) return { point, shape };
    // A wall: it is the deeper region's.
    if (shape === undefined || floor < below) return passed;
    passed = { point, shape };
  }
  return passed;
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
      const { x, y } = pixelOf(
        seen.pose,
        seen.size,
        point,
        heightAt(shape.region.level * seen.exaggeration, seen),
      );
      return x >= left && x <= right && y >= top && y <= bottom;
    }),
  );
}

/** What the card of a resting pointer shows, and when it appears. */
import { heightAt, type Picked, type Seen } from '#app/scene/pick-region.ts';
import { pixelOf } from '#app/scene/view-pose.ts';
import type { RegionShape } from '#app/state/region-shape.ts';
import { faceOnShow } from '#app/state/shown-face.ts';
import type { WorkbenchState } from '#app/state/workbench-state.ts';
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan } from '#geometry/span.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { Contour, ShownPlan } from '#job/formats/plan-file.ts';
import type { PlaceDepth } from '#run/depth-job.ts';
import type { Rested } from './HoverCard.tsx';

/** ms that the pointer rests before the card comes: it follows no hand that is on its way. */
const DELAY = 280;

export function restTimer(report: (rested: Rested | undefined) => void) {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isOn = false;
  return {
    begin: (make: () => Rested | undefined) => {
      clearTimeout(timer);
      timer = setTimeout(() => {
        isOn = true;
        report(make());
      }, DELAY);
    },
    end: () => {
      clearTimeout(timer);
      if (isOn) report(undefined);
      isOn = false;
    },
  };
}

interface RestAsk {
  readonly picked: Picked;
  readonly pointer: Point;
  readonly reading: PlaceDepth | undefined;
  readonly seen: Seen;
}

export function restedAt({ derived }: WorkbenchState, ask: RestAsk): Rested | undefined {
  const { picked, pointer, reading, seen } = ask;
  const region = picked.shape?.region;
  const plan = derived.page?.plan;
  if (region === undefined || plan === undefined) return undefined;
  const floors = derived.shapes
    .filter((shape) => shape.region.level > 0 && isInTheWay(shape, seen))
    .map((shape) => screenBox(shape, seen));
  return {
    pointer,
    region,
    reading: reading && (faceOnShow({ derived }) === 'far' ? fromFar(reading) : reading),
    toLine: nearestLine(plan, picked.point),
    around: region.level === 0 || picked.shape === undefined ? undefined : screenBox(picked.shape, seen),
    floors,
  };
}

/** The same place from the far face: what is left is one and the same. */
function fromFar(reading: PlaceDepth): PlaceDepth {
  return { ...reading, ...reading.far };
}

/** Smaller floors may be covered, px. */
const LEAST_FLOOR = 4;

/** Whether a floor can be seen, and is large enough to be kept clear of. */
function isInTheWay({ box: { minX, minY, maxX, maxY }, region }: RegionShape, seen: Seen): boolean {
  const { pose, size, exaggeration } = seen;
  const half = (Math.hypot(maxX - minX, maxY - minY) / 2) * pose.pixelsPerMm;
  if (2 * half < LEAST_FLOOR) return false;
  const middle = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  const { x, y } = pixelOf(pose, size, middle, heightAt(region.level * exaggeration, seen));
  return x > -half && y > -half && x < size.width + half && y < size.height + half;
}

function screenBox({ box, region }: RegionShape, seen: Seen): Box {
  const { pose, size, exaggeration } = seen;
  const z = heightAt(region.level * exaggeration, seen);
  const corners = [
    { x: box.minX, y: box.minY },
    { x: box.maxX, y: box.minY },
    { x: box.minX, y: box.maxY },
    { x: box.maxX, y: box.maxY },
  ].map((corner) => pixelOf(pose, size, corner, z));
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
}

/** mm from the place to the nearest scribe line of any stage. */
export function nearestLine({ stages }: Pick<ShownPlan, 'stages'>, at: Point): number | undefined {
  let nearest = Number.POSITIVE_INFINITY;
  for (const { lines } of stages) {
    for (const line of lines) {
      if (boxGap(line, at) >= nearest) continue;
      for (const span of pathOfContour(line).spans) nearest = Math.min(nearest, distanceToSpan(span, at));
    }
  }
  return nearest === Number.POSITIVE_INFINITY ? undefined : nearest;
}

/** No line comes nearer than this: its vertices' box, and half of the longest chord for what its arcs reach out. */
function boxGap({ vertices }: Contour, { x, y }: Point): number {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [vx, vy] of vertices) {
    minX = Math.min(minX, vx);
    minY = Math.min(minY, vy);
    maxX = Math.max(maxX, vx);
    maxY = Math.max(maxY, vy);
  }
  const out = Math.hypot(maxX - minX, maxY - minY) / 2;
  return Math.hypot(Math.max(minX - x, 0, x - maxX), Math.max(minY - y, 0, y - maxY)) - out;
}

/** A region of the plan as it is drawn and looked up: exact to find what lies where, as fine as the eye can see to draw. */
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpans, joinBoxes } from '#geometry/box.ts';
import { type BoxIndex, indexBoxes } from '#geometry/box-index.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, pointAlong } from '#geometry/span.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { Contour, ShownRegion } from '#job/formats/plan-file.ts';

type Rings = readonly (readonly Point[])[];

export interface RegionShape {
  readonly region: ShownRegion;
  /** Polygons as fine as a first view needs; outer ring first, then holes; first point not repeated. Made on first use. */
  readonly rings: Rings;
  /** The exact border, which decides what holds a point. */
  readonly loops: readonly Loop[];
  readonly box: Box;
}

/** Turn between two points of an arc where no scale is given: 7.5° leaves 0.2 % of the radius. */
const PLAIN_TURN = Math.PI / 24;
/** A finer turn than this has no end in a picture: an arc of 1000 m is then off by 0.1 pixels at 0.01 mm a pixel. */
const FINEST_TURN = 1e-4;
/** Pixels by which a chord may miss its arc. */
const SEEN = 0.2;

/**
 * Shapes of a plan's regions. A region whose border did not change keeps the rings it had, the very same object, so that
 * whatever was made from them stays good: changing a depth changes no border.
 */
export function regionShapes(regions: readonly ShownRegion[], before: readonly RegionShape[]): RegionShape[] {
  const known = new Map(before.map((shape) => [shape.region.id, shape]));
  return regions.map((region) => {
    const old = known.get(region.id);
    if (old !== undefined && isSameBorder(old.region.contours, region.contours)) {
      return shapeOf(region, { box: old.box, rings: () => old.rings, loops: () => old.loops });
    }
    const { contours } = region;
    const box = boxOfSpans(pathOfContour(itemAt(contours, 0)).spans);
    return shapeOf(region, {
      box,
      rings: () => contours.map((contour) => contourPoints(contour)),
      loops: () => contours.map((contour) => pathOfContour(contour).spans),
    });
  });
}

function shapeOf(
  region: ShownRegion,
  {
    box,
    rings,
    loops,
  }: { readonly box: Box; readonly rings: () => Rings; readonly loops: () => readonly Loop[] },
): RegionShape {
  let made: Rings | undefined;
  let exact: readonly Loop[] | undefined;
  return {
    region,
    box,
    get rings() {
      made ??= rings();
      return made;
    },
    get loops() {
      exact ??= loops();
      return exact;
    },
  };
}

function isSameBorder(a: readonly Contour[], b: readonly Contour[]): boolean {
  return a.length === b.length && a.every((contour, index) => isSameContour(contour, itemAt(b, index)));
}

function isSameContour(one: Contour, other: Contour): boolean {
  const [a, b] = [one.vertices, other.vertices];
  return (
    one === other ||
    (a.length === b.length &&
      a.every((vertex, index) => vertex.every((value, axis) => value === itemAt(b, index)[axis])))
  );
}

/**
 * Points along a contour, arcs cut into chords; the last point of an open one included. With a scale the chords are only as
 * fine as it can show.
 */
export function contourPoints(contour: Contour, pixelsPerMm = Number.POSITIVE_INFINITY): Point[] {
  const points: Point[] = [];
  const { spans, closed } = pathOfContour(contour);
  for (const span of spans) {
    const steps =
      span.kind === 'line' ? 1 : Math.ceil(Math.abs(span.sweep) / turnOf(span.radius, pixelsPerMm));
    for (let step = 0; step < steps; step++) points.push(pointAlong(span, step / steps));
  }
  const last = spans.at(-1);
  if (!closed && last !== undefined) points.push(last.end);
  return points;
}

/** Turn of a chord that stands off its arc by no more than can be seen: sagitta = r (1 − cos(turn / 2)). */
function turnOf(radius: number, pixelsPerMm: number): number {
  if (pixelsPerMm === Number.POSITIVE_INFINITY) return PLAIN_TURN;
  const turn = 2 * Math.acos(Math.max(0, 1 - SEEN / (radius * pixelsPerMm)));
  return Math.max(FINEST_TURN, turn);
}

/** Whether the region holds the point, by its exact border: what is shown of a place is what the plan has there. */
export function shapeHolds(shape: RegionShape, point: Point): boolean {
  const { minX, minY, maxX, maxY } = shape.box;
  const { x, y } = point;
  if (x < minX || x > maxX || y < minY || y > maxY) return false;
  return isInsideLoops(loopsAround(shape.loops, point), point);
}

/** Above so many a region's loops are found by their boxes. */
const MANY_LOOPS = 64;

/** Of a region's loops, as long as they live. */
const loopIndices = new WeakMap<readonly Loop[], BoxIndex>();

/** Of many loops those that can wind around the point. */
function loopsAround(loops: readonly Loop[], { x, y }: Point): readonly Loop[] {
  if (loops.length <= MANY_LOOPS) return loops;
  const index = loopIndices.get(loops) ?? indexBoxes(loops.map(boxOfSpans));
  loopIndices.set(loops, index);
  const near: Loop[] = [];
  index.around(x, y, (number) => near.push(itemAt(loops, number)));
  return near;
}

export function boxOfShapes(shapes: readonly RegionShape[]): Box | undefined {
  const [first, ...rest] = shapes.map((shape) => shape.box);
  return first === undefined ? undefined : rest.reduce(joinBoxes, first);
}

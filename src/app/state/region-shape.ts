/** A region of the plan as polygons fine enough for the eye: for drawing, picking and asking. The plan itself stays exact. */
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpans, joinBoxes } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { pointAlong } from '#geometry/span.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { Contour, ShownRegion } from '#handoff/plan-file.ts';

type Rings = readonly (readonly Point[])[];

export interface RegionShape {
  readonly region: ShownRegion;
  /** Outer ring first, then holes; first point not repeated. Made when first asked for: few regions are looked at closely. */
  readonly rings: Rings;
  readonly box: Box;
}

/** Turn between two points of an arc at its finest; 7.5° leaves 0.2 % of the radius, a pixel at a radius of 500. */
const FINEST_TURN = Math.PI / 24;
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
      return shapeOf(region, { box: old.box, rings: () => old.rings });
    }
    const { contours } = region;
    const box = boxOfSpans(pathOfContour(itemAt(contours, 0)).spans);
    return shapeOf(region, { box, rings: () => contours.map((contour) => contourPoints(contour)) });
  });
}

function shapeOf(
  region: ShownRegion,
  { box, rings }: { readonly box: Box; readonly rings: () => Rings },
): RegionShape {
  let made: Rings | undefined;
  return {
    region,
    box,
    get rings() {
      made ??= rings();
      return made;
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
      span.kind === 'line' ? 1 : Math.ceil(Math.abs(span.sweep) / turnOf(span.radius * pixelsPerMm));
    for (let step = 0; step < steps; step++) points.push(pointAlong(span, step / steps));
  }
  const last = spans.at(-1);
  if (!closed && last !== undefined) points.push(last.end);
  return points;
}

/** Turn of a chord that stands off an arc of so many pixels' radius by no more than can be seen. */
function turnOf(radius: number): number {
  const turn = 2 * Math.acos(Math.max(0, 1 - SEEN / radius));
  return Math.max(FINEST_TURN, turn);
}

/** Whether the region holds the point: even-odd over all rings. */
export function shapeHolds(shape: RegionShape, { x, y }: Point): boolean {
  const { minX, minY, maxX, maxY } = shape.box;
  if (x < minX || x > maxX || y < minY || y > maxY) return false;
  let inside = false;
  for (const ring of shape.rings) {
    let before = itemAt(ring, ring.length - 1);
    for (const point of ring) {
      const crosses = point.y > y !== before.y > y;
      if (crosses && x < point.x + ((y - point.y) * (before.x - point.x)) / (before.y - point.y))
        inside = !inside;
      before = point;
    }
  }
  return inside;
}

export function boxOfShapes(shapes: readonly RegionShape[]): Box | undefined {
  const [first, ...rest] = shapes.map((shape) => shape.box);
  return first === undefined ? undefined : rest.reduce(joinBoxes, first);
}

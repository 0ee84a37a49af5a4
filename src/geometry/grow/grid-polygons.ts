/**
 * Polygons: loops on clipper-lib's integer grid, where topology is decided (M3.4). The only file that knows clipper-lib.
 *
 * Arcs become chords whose ends lie on the arc at fixed angles of its circle, so that two arcs of one circle share
 * their vertices and leave no slivers between them. What comes out of the grid is made exact again by
 * `rebuild-loops.ts`, so a chord decides only which borders meet, never where a line lies.
 */

import ClipperLib from 'clipper-lib';
import { boxOfSpans } from '#geometry/box.ts';
import { type Point, pointOnCircle } from '#geometry/point.ts';
import { type ArcSpan, type Loop, type Span, startAngle } from '#geometry/span.ts';
import { SAGITTA, UNITS_PER_MM } from '#geometry/tolerances.ts';
import { acos } from '#maths/arc-cosine.ts';
import { closeSlits } from './close-slits.ts';
import type { GridPoint, GridPolygon } from './grid-polygon.ts';

/** Vertices closer to an arc's end than this share of a chord are left out: they would only make specks. */
const END_CLEARANCE = 0.1;

// clipper-lib reports trouble with alert(), which a worker does not have and a page must not show.
ClipperLib.Error = (message: string) => {
  throw new Error(`clipper-lib: ${message}`);
};

// clipper-lib chooses how to round by the name of the browser: one way for all, half a unit away from 0.
ClipperLib.Clipper.Round = (value) => (value < 0 ? Math.ceil(value - 0.5) : Math.floor(value + 0.5));

/** A whole millimetre near the middle of the spans: the grid's origin, which keeps coordinates small. */
export function gridOrigin(spans: Iterable<Span>): Point {
  const box = boxOfSpans(spans);
  if (box.minX > box.maxX) return { x: 0, y: 0 };
  return { x: Math.round((box.minX + box.maxX) / 2), y: Math.round((box.minY + box.maxY) / 2) };
}

/** Puts a closed chain of spans on the grid. */
export function gridPolygonOf(loop: Loop, origin: Point): GridPolygon {
  const polygon: GridPoint[] = [];
  for (const span of loop) {
    pushPoint(polygon, span.start, origin);
    if (span.kind === 'arc') {
      for (const point of pointsInsideArc(span)) pushPoint(polygon, point, origin);
    }
  }
  return polygon;
}

export function pointOf(point: GridPoint, origin: Point): Point {
  return { x: point.X / UNITS_PER_MM + origin.x, y: point.Y / UNITS_PER_MM + origin.y };
}

function pushPoint(polygon: GridPoint[], point: Point, origin: Point): void {
  polygon.push({
    X: Math.round((point.x - origin.x) * UNITS_PER_MM),
    Y: Math.round((point.y - origin.y) * UNITS_PER_MM),
  });
}

/** Points strictly inside the arc at the fixed angles of its circle, in the order of travel. */
function pointsInsideArc(arc: ArcSpan): Point[] {
  const step = (2 * Math.PI) / chordsPerTurn(arc.radius);
  const from = startAngle(arc) / step;
  const turned = arc.sweep / step;
  const low = Math.min(from, from + turned) + END_CLEARANCE;
  const high = Math.max(from, from + turned) - END_CLEARANCE;
  const points: Point[] = [];
  for (let index = Math.ceil(low); index <= high; index++) {
    points.push(pointOnCircle(arc.center, arc.radius, index * step));
  }
  return arc.sweep > 0 ? points : points.reverse();
}

/** Chords of a full circle so that none lies farther than `SAGITTA` from it: a multiple of four, eight at least. */
export function chordsPerTurn(radius: number): number {
  const halfAngle = acos(Math.max(0.7, 1 - SAGITTA / radius));
  return Math.max(8, 4 * Math.ceil(Math.PI / halfAngle / 4));
}

export type PolygonOperation = 'unite' | 'subtract' | 'intersect';

/** Boolean of two sets of polygons, each read by the non-zero rule. */
export function combinePolygons(
  operation: PolygonOperation,
  a: readonly GridPolygon[],
  b: readonly GridPolygon[],
): readonly GridPolygon[] {
  const { ClipType, PolyFillType } = ClipperLib;
  const type = {
    unite: ClipType.ctUnion,
    subtract: ClipType.ctDifference,
    intersect: ClipType.ctIntersection,
  };
  return execute({ type: type[operation], fill: PolyFillType.pftNonZero }, a, b);
}

/** What is wound at least once anticlockwise, when every clockwise polygon takes one turn away. */
export function positivelyWound(polygons: readonly GridPolygon[]): readonly GridPolygon[] {
  const { ClipType, PolyFillType } = ClipperLib;
  return execute({ type: ClipType.ctUnion, fill: PolyFillType.pftPositive }, polygons, []);
}

interface Operation {
  readonly type: number;
  readonly fill: number;
}

/** Areas of the result that lie side by side may come out with a slit of no width between them: it is closed. */
function execute(
  { type, fill }: Operation,
  subject: readonly GridPolygon[],
  clip: readonly GridPolygon[],
): readonly GridPolygon[] {
  const clipper = new ClipperLib.Clipper();
  const solution: { X: number; Y: number }[][] = [];
  clipper.AddPaths(subject as GridPoint[][], ClipperLib.PolyType.ptSubject, true);
  if (clip.length > 0) clipper.AddPaths(clip as GridPoint[][], ClipperLib.PolyType.ptClip, true);
  clipper.Execute(type, solution, fill, fill);
  return closeSlits(solution);
}

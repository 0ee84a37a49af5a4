/**
 * Takes out the segments that are too short for a machine to follow: the two ends of such a segment become one vertex, at
 * whichever of its start, end and middle moves the outline least: half the least length at the worst, for a step between
 * two parallels. Neighbours keep their bulge. Direction and start stay. Linear in the vertices, for a few rounds.
 */

import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, pointAlong, type Span } from '#geometry/span.ts';
import type { Contour } from '#job/formats/plan-file.ts';
import { hypot } from '#maths/hypot.ts';
import { type ContourVertex, spanOfBulge } from './contour.ts';

interface Merging {
  /** In the contour's unit. */
  readonly least: number;
  /** Rounds a coordinate as it will be written, so that what is written keeps the promise. */
  readonly round: (value: number) => number;
}

/** The contour rounded and without segments whose ends are nearer than `least`; undefined when nothing is left. */
export function mergeMicroSegments(contour: Contour, merging: Merging): Contour | undefined {
  const { round } = merging;
  const { closed } = contour;
  let vertices: readonly ContourVertex[] = contour.vertices.map(([x, y, bulge]) => [
    round(x),
    round(y),
    bulge,
  ]);
  for (;;) {
    const merged = mergeOnce(vertices, closed, merging);
    if (merged.length === vertices.length) break;
    vertices = merged;
  }
  return vertices.length < 2 ? undefined : { closed, vertices };
}

/** One round: every short segment that does not touch one already merged in this round. */
function mergeOnce(vertices: readonly ContourVertex[], closed: boolean, merging: Merging): ContourVertex[] {
  const merged: ContourVertex[] = [];
  const last = vertices.length - 1;
  for (let index = 0; index < last; index++) {
    if (chordAfter(vertices, index) >= merging.least) {
      merged.push(itemAt(vertices, index));
      continue;
    }
    merged.push(mergedVertex(vertices, { index, closed }, merging));
    index++;
    if (index === last) return merged;
  }
  const end = vertices[last];
  if (end === undefined) return merged;
  // The closing segment: only where neither of its ends has just been moved.
  const first = merged[0];
  const closes = closed && first === vertices[0] && chordAfter(vertices, last) < merging.least;
  if (!closes) merged.push(end);
  else merged[0] = mergedVertex(vertices, { index: last, closed }, merging);
  return merged;
}

function chordAfter(vertices: readonly ContourVertex[], index: number): number {
  const [x, y] = itemAt(vertices, index);
  const [endX, endY] = itemAt(vertices, (index + 1) % vertices.length);
  return hypot(endX - x, endY - y);
}

/** The vertex that stands for both ends of segment `index`; it carries the next segment's bulge. */
function mergedVertex(
  vertices: readonly ContourVertex[],
  { index, closed }: { index: number; closed: boolean },
  { round }: Merging,
): ContourVertex {
  const count = vertices.length;
  const at = (offset: number): ContourVertex | undefined =>
    vertices[closed ? (index + offset + count) % count : index + offset];
  const [x, y, bulge] = itemAt(vertices, index);
  const [endX, endY, nextBulge] = itemAt(vertices, (index + 1) % count);
  const start: Point = { x, y };
  const end: Point = { x: endX, y: endY };
  const middle = pointAlong(spanOfBulge(start, end, bulge), 0.5);
  const before = at(-1);
  const after = at(2);
  const neighbours = (from: Point, to: Point): Span[] => {
    const spans: Span[] = [];
    if (before !== undefined) pushSpan(spans, { x: before[0], y: before[1] }, from, before[2]);
    if (after !== undefined) pushSpan(spans, to, { x: after[0], y: after[1] }, nextBulge);
    return spans;
  };
  // An arc whose end slides along it moves across itself elsewhere: its middle is watched as well.
  const watched = [start, end, ...neighbours(start, end).flatMap(innerPoints)];
  const moved = (candidate: Point): number => {
    const spans = neighbours(candidate, candidate);
    return Math.max(...watched.map((from) => Math.min(...spans.map((span) => distanceToSpan(span, from)))));
  };
  let best = start;
  for (const candidate of [end, middle]) if (moved(candidate) < moved(best)) best = candidate;
  return [round(best.x), round(best.y), nextBulge];
}

function pushSpan(spans: Span[], start: Point, end: Point, bulge: number): void {
  if (start.x !== end.x || start.y !== end.y) spans.push(spanOfBulge(start, end, bulge));
}

function innerPoints(span: Span): Point[] {
  return span.kind === 'line' ? [] : [0.25, 0.5, 0.75].map((share) => pointAlong(span, share));
}

/**
 * How far the lines of a stage have moved. A line belongs to the earlier one that it lies nearest to; how far it moved is the
 * farthest that either leaves the other (Hausdorff distance), looked at five places a span: exact at corners, and off by a
 * small share of the bow where one span bows away from the middle of another. Cost: lines that changed, squared, by their boxes.
 */
import { type Box, boxesMeet, boxOfSpans, growBox } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, pointAlong, type Span } from '#geometry/span.ts';
import { SAME_FIGURE } from '#geometry/tolerances.ts';
import type { Contour } from '#job/formats/plan-file.ts';
import { pathOfContour } from './contour.ts';

/** mm, in the drawing's frame: a place on the line. */
export interface LineChanges {
  readonly moved: readonly { readonly at: Point; readonly by: number }[];
  readonly added: readonly Point[];
  readonly gone: readonly Point[];
}

const LOOKS = 4;
/** Of its length: as far as an open line may have moved and still be the same. */
const OPEN_REACH = 0.05;

export function lineChanges(before: readonly Contour[], now: readonly Contour[]): LineChanges {
  const kept = new Set(before.map(keyOf));
  const earlier = linesGone(before, now).map(shapeOf);
  const later = now.filter((contour) => !kept.has(keyOf(contour))).map(shapeOf);
  const pairs = later
    .flatMap((line) =>
      earlier
        .filter((other) => line.closed === other.closed && boxesMeet(line.box, other.box))
        .map((other) => ({ line, other, ...farthestApart(other.spans, line.spans) })),
    )
    .sort((a, b) => a.by - b.by);
  const done = new Set<Shape>();
  const moved: LineChanges['moved'][number][] = [];
  for (const { line, other, at, by } of pairs) {
    if (done.has(line) || done.has(other)) continue;
    done.add(line).add(other);
    if (by > SAME_FIGURE) moved.push({ at, by });
  }
  const leftOf = (shapes: readonly Shape[]) =>
    shapes.filter((shape) => !done.has(shape)).map(({ spans }) => spans[0]?.start ?? { x: 0, y: 0 });
  return { moved, added: leftOf(later), gone: leftOf(earlier) };
}

/** Lines that are not there any more, to the last figure, wherever they went. */
export function linesGone(before: readonly Contour[], now: readonly Contour[]): Contour[] {
  const stays = new Set(now.map(keyOf));
  return before.filter((contour) => !stays.has(keyOf(contour)));
}

/** mm that two sets of borders lie apart at most; infinite where only one of them has any. */
export function contoursApart(before: readonly Contour[], now: readonly Contour[]): number {
  if (JSON.stringify(before) === JSON.stringify(now)) return 0;
  const [a, b] = [before, now].map((contours) => contours.flatMap((each) => pathOfContour(each).spans)) as [
    Span[],
    Span[],
  ];
  return farthestApart(a, b).by;
}

interface Shape {
  readonly closed: boolean;
  readonly spans: readonly Span[];
  readonly box: Box;
}

function keyOf({ closed, vertices }: Contour): string {
  return `${closed} ${vertices.join(' ')}`;
}

function shapeOf(contour: Contour): Shape {
  const { closed, spans } = pathOfContour(contour);
  const box = boxOfSpans(spans);
  if (closed) return { closed, spans, box };
  // A straight line along x or y has a box of no width, which no other such line meets, however near it lies.
  return {
    closed,
    spans,
    box: growBox(box, OPEN_REACH * Math.max(box.maxX - box.minX, box.maxY - box.minY)),
  };
}

/** The place reported lies on the later line, or nearest to it on the earlier one. */
function farthestApart(earlier: readonly Span[], later: readonly Span[]): { at: Point; by: number } {
  const [there, back] = [farthestFrom(earlier, later), farthestFrom(later, earlier)];
  return there.by >= back.by ? there : back;
}

function farthestFrom(others: readonly Span[], spans: readonly Span[]): { at: Point; by: number } {
  let farthest = { at: spans[0]?.start ?? { x: 0, y: 0 }, by: 0 };
  for (const span of spans) {
    for (let look = 0; look <= LOOKS; look++) {
      const at = pointAlong(span, look / LOOKS);
      const by = others.reduce(
        (least, each) => Math.min(least, distanceToSpan(each, at)),
        Number.POSITIVE_INFINITY,
      );
      if (by > farthest.by) farthest = { at, by };
    }
  }
  return farthest;
}

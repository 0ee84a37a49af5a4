/** Which way a loop turns round a point: exact for arcs, without cutting them into chords. */
import { cross, distance, type Point, subtract } from './point.ts';
import type { ArcSpan, Loop, Span } from './span.ts';

/** Whether the loop encloses the point; a point on the loop itself may go either way. */
export function isInLoop(loop: Loop, point: Point): boolean {
  return windingNumber(loop, point) !== 0;
}

/**
 * Times that the loop turns counter-clockwise round the point: the winding number of its chords, and one more or less
 * for each circular segment, between arc and chord, that holds the point. A point on a chord is taken to lie to its
 * right (larger x), on a level chord above it, in both counts alike.
 */
function windingNumber(loop: Loop, point: Point): number {
  let turns = 0;
  for (const span of loop) {
    const isLeft = liesLeft(span, point);
    const { start, end } = span;
    if (start.y <= point.y !== end.y <= point.y) {
      const isUpward = start.y <= point.y;
      if (isUpward && isLeft) turns++;
      if (!isUpward && !isLeft) turns--;
    }
    if (span.kind === 'arc') turns += turnsOfSegment(span, point, isLeft);
  }
  return turns;
}

/** Left of the chord, in its direction. */
function liesLeft({ start, end }: Span, point: Point): boolean {
  const side = cross(subtract(end, start), subtract(point, start));
  if (side !== 0) return side > 0;
  if (start.y !== end.y) return end.y < start.y;
  return end.x > start.x;
}

function turnsOfSegment(arc: ArcSpan, point: Point, isLeft: boolean): number {
  const isOnArcSide = isLeft === arc.sweep < 0;
  if (!isOnArcSide || distance(point, arc.center) >= arc.radius) return 0;
  return Math.sign(arc.sweep);
}

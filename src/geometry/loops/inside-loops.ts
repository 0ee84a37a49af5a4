/** Whether a point lies inside loops of lines and arcs, exactly: arcs are not broken into chords. Cost: linear in the spans. */

import { cross, distance, dot, type Point, subtract } from '#geometry/point.ts';
import type { Loop, Span } from '#geometry/span.ts';
import { atan2 } from '#maths/arc-tangent.ts';

/**
 * True when the loops wind around the point: inside an outer loop and in none of its holes. Each span is seen from the point
 * under some signed angle, and around a point that is inside they add up to a full turn. A point on a border is neither in
 * nor out: ask first how far it is from the spans.
 */
export function isInsideLoops(loops: readonly Loop[], point: Point): boolean {
  let turned = 0;
  for (const loop of loops) for (const span of loop) turned += angleSeen(span, point);
  return Math.round(turned / (2 * Math.PI)) !== 0;
}

/** The signed angle through which one turns to follow the span with the eyes. */
function angleSeen(span: Span, eye: Point): number {
  const toStart = subtract(span.start, eye);
  const toEnd = subtract(span.end, eye);
  const chord = atan2(cross(toStart, toEnd), dot(toStart, toEnd));
  if (span.kind === 'line') return chord;
  // Between chord and arc the arc passes on the far side of the eye: a full turn more than the chord.
  const side = Math.sign(span.sweep);
  // By the angle, not the cross product: from the middle of a half circle's chord that is 0, and the angle still has a sign.
  const isBeyondChord = chord * side < 0;
  return isBeyondChord && distance(eye, span.center) < span.radius ? chord + side * 2 * Math.PI : chord;
}

/**
 * Spans that leave one vertex, in counter-clockwise order. Directions that differ clearly decide by themselves; where two
 * are nearly one, as where a fillet runs into a line, the spans are compared further out along the shorter chord: since
 * they meet nowhere else, the order there is the order everywhere.
 */

import { itemAt } from '#geometry/assert.ts';
import { distance, subtract } from '#geometry/point.ts';
import type { Span } from '#geometry/span.ts';
import { NEARLY_ONE_DIRECTION } from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';

/** Shares of the shorter chord at which to compare: short of its end, where half circles would be opposite. */
const LOOKS = [0.5, 0.9];

interface Leaving {
  readonly half: number;
  readonly span: Span;
}

interface Ray extends Leaving {
  readonly angle: number;
  readonly chord: number;
}

export function orderAround(leaving: readonly Leaving[]): Leaving[] {
  const rays: Ray[] = leaving.map((each) => ({
    ...each,
    angle: halfTurn(directionAt(each.span, 0)),
    chord: distance(each.span.start, each.span.end),
  }));
  rays.sort((a, b) => a.angle - b.angle || a.half - b.half);
  if (rays.length > 2) settleNearRays(rays);
  return rays;
}

/** Swaps neighbours that turn out to be the other way round further out; also across the seam of the circle. */
function settleNearRays(rays: Ray[]): void {
  for (let round = 0; round < rays.length; round++) {
    let hasSwapped = false;
    for (let at = 0; at < rays.length; at++) {
      const following = (at + 1) % rays.length;
      const seam = following === 0 ? 2 * Math.PI : 0;
      const a = itemAt(rays, at);
      const b = itemAt(rays, following);
      const gap = b.angle + seam - a.angle;
      if (Math.abs(gap) > NEARLY_ONE_DIRECTION || turnFurtherOut(a, b) >= 0) continue;
      rays[at] = { ...b, angle: b.angle + seam };
      rays[following] = { ...a, angle: a.angle - seam };
      hasSwapped = true;
    }
    if (!hasSwapped) return;
  }
}

/** Positive when `b` lies counter-clockwise of `a`. */
function turnFurtherOut(a: Ray, b: Ray): number {
  const reach = Math.min(a.chord, b.chord);
  return LOOKS.reduce(
    (sum, share) => sum + halfTurn(directionAt(b.span, share * reach) - directionAt(a.span, share * reach)),
    0,
  );
}

/** Direction from the start to the span's point that far away, radians; from the ends and the sweep alone. */
function directionAt(span: Span, away: number): number {
  const chord = subtract(span.end, span.start);
  const ahead = atan2(chord.y, chord.x);
  if (span.kind === 'line') return ahead;
  const across = Math.sqrt(Math.max(0, 4 * span.radius * span.radius - away * away));
  const turned = atan2(away, across);
  return ahead - span.sweep / 2 + Math.sign(span.sweep) * turned;
}

/** The same angle between −π and π. */
function halfTurn(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}

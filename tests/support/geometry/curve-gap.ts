/** How far apart two curves lie, by distance and not by vertices: the largest distance from points along either to the other. */
import { distanceToSpan, pointAlong, type Span } from '#geometry/span.ts';

const SHARES = [0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1];

export function curveGap(a: readonly Span[], b: readonly Span[]): number {
  return Math.max(oneWay(a, b), oneWay(b, a));
}

function oneWay(from: readonly Span[], to: readonly Span[]): number {
  let worst = 0;
  for (const span of from) {
    for (const share of SHARES) {
      const point = pointAlong(span, share);
      let nearest = Number.POSITIVE_INFINITY;
      for (const other of to) nearest = Math.min(nearest, distanceToSpan(other, point));
      worst = Math.max(worst, nearest);
    }
  }
  return worst;
}

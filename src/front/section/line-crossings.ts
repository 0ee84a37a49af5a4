/** Where a straight cut crosses an offset feature: exact. */

import { circleOfArc, type OffsetCurve, shareOfArc, wayOfLine } from '#front/contours/offset-curve.ts';
import type { Point } from '#geometry/point.ts';
import { chordOnWay, crossWays, type Way } from '#geometry/spans/cross-carriers.ts';
import { hypot } from '#maths/hypot.ts';

/** Distances from `from` at which the way to `to` crosses the curve. Running along a line counts as no crossing. */
export function crossingsOf(curve: OffsetCurve, from: Point, to: Point): number[] {
  const length = hypot(to.x - from.x, to.y - from.y);
  const way = { ...from, dx: (to.x - from.x) / length, dy: (to.y - from.y) / length };
  const found = curve.radius === 0 ? crossLine(curve, way) : crossArc(curve, way);
  return found.filter((at) => at >= 0 && at <= length);
}

function crossLine(line: OffsetCurve, way: Way): number[] {
  const crossing = crossWays(way, wayOfLine(line));
  return crossing === undefined || crossing.onB < 0 || crossing.onB > 1 ? [] : [crossing.onA];
}

function crossArc(arc: OffsetCurve, way: Way): number[] {
  const { foot, half } = chordOnWay(way, circleOfArc(arc));
  if (half === undefined) return [];
  return [foot - half, foot + half].filter(
    (at) => shareOfArc(arc, way.x + way.dx * at, way.y + way.dy * at) >= 0,
  );
}

/** Where a straight cut crosses an offset feature: exact. */

import { type OffsetCurve, shareOfArc } from '#front/contours/offset-curve.ts';
import type { Point } from '#geometry/point.ts';
import { halfChord } from '#geometry/spans/cross-carriers.ts';
import { hypot } from '#maths/hypot.ts';

/** Distances from `from` at which the way to `to` crosses the curve. Running along a line counts as no crossing. */
export function crossingsOf(curve: OffsetCurve, from: Point, to: Point): number[] {
  const length = hypot(to.x - from.x, to.y - from.y);
  const ux = (to.x - from.x) / length;
  const uy = (to.y - from.y) / length;
  const found = curve.radius === 0 ? crossLine(curve, from, ux, uy) : crossArc(curve, from, ux, uy);
  return found.filter((at) => at >= 0 && at <= length);
}

function crossLine({ ax, ay, bx, by }: OffsetCurve, from: Point, ux: number, uy: number): number[] {
  const vx = bx - ax;
  const vy = by - ay;
  const turn = ux * vy - uy * vx;
  if (turn === 0) return [];
  const wx = ax - from.x;
  const wy = ay - from.y;
  const share = (wx * uy - wy * ux) / turn;
  return share < 0 || share > 1 ? [] : [(wx * vy - wy * vx) / turn];
}

function crossArc(arc: OffsetCurve, from: Point, ux: number, uy: number): number[] {
  const { cx, cy } = arc.feature;
  const foot = (cx - from.x) * ux + (cy - from.y) * uy;
  const off = (cx - from.x) * uy - (cy - from.y) * ux;
  const half = halfChord(arc.radius, off);
  if (half === undefined) return [];
  return [foot - half, foot + half].filter((at) => shareOfArc(arc, from.x + ux * at, from.y + uy * at) >= 0);
}

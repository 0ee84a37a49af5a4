/** Maps of the plane that keep straight lines straight: (x, y) → (xx·x + xy·y + x0, yx·x + yy·y + y0). */

import type { Point } from '#geometry/point.ts';
import { EQUAL_SCALE } from '#geometry/tolerances.ts';

export interface Affine {
  readonly xx: number;
  readonly xy: number;
  readonly x0: number;
  readonly yx: number;
  readonly yy: number;
  readonly y0: number;
}

export const MIRROR_X: Affine = { xx: -1, xy: 0, x0: 0, yx: 0, yy: 1, y0: 0 };

export function scaling(factor: number): Affine {
  return { xx: factor, xy: 0, x0: 0, yx: 0, yy: factor, y0: 0 };
}

/** `inner` first, then `outer`. */
export function compose(outer: Affine, inner: Affine): Affine {
  return {
    xx: outer.xx * inner.xx + outer.xy * inner.yx,
    xy: outer.xx * inner.xy + outer.xy * inner.yy,
    x0: outer.xx * inner.x0 + outer.xy * inner.y0 + outer.x0,
    yx: outer.yx * inner.xx + outer.yy * inner.yx,
    yy: outer.yx * inner.xy + outer.yy * inner.yy,
    y0: outer.yx * inner.x0 + outer.yy * inner.y0 + outer.y0,
  };
}

export function mapPoint(map: Affine, { x, y }: Point): Point {
  return { x: map.xx * x + map.xy * y + map.x0, y: map.yx * x + map.yy * y + map.y0 };
}

/** Directions and lengths: the map without its shift. */
export function mapVector(map: Affine, { x, y }: Point): Point {
  return { x: map.xx * x + map.xy * y, y: map.yx * x + map.yy * y };
}

export function isIdentity(map: Affine): boolean {
  return map.xx === 1 && map.yy === 1 && map.xy === 0 && map.yx === 0 && map.x0 === 0 && map.y0 === 0;
}

/** Negative when the map mirrors. */
export function determinant(map: Affine): number {
  return map.xx * map.yy - map.xy * map.yx;
}

/** True when circles stay circles. */
export function keepsCircles(map: Affine): boolean {
  return areEqualAxes({ x: map.xx, y: map.yx }, { x: map.xy, y: map.yy });
}

/** True when two directions are square to each other and equally long. */
export function areEqualAxes(a: Point, b: Point): boolean {
  const lengthA = a.x * a.x + a.y * a.y;
  const lengthB = b.x * b.x + b.y * b.y;
  const slack = EQUAL_SCALE * Math.max(lengthA, lengthB);
  return Math.abs(lengthA - lengthB) <= slack && Math.abs(a.x * b.x + a.y * b.y) <= slack;
}

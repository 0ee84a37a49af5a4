/**
 * Arc tangents with the same bits on every engine: `atan` right to within one unit in the last place, `atan2` to one and a
 * half.
 *
 * After s_atan.c and e_atan2.c of fdlibm 5.3. Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted, provided that this notice is preserved.
 */

const HALF_TURN_TAIL = 1.2246467991473532e-16;

/** A ratio beyond which the angle is a quarter turn to the last bit: 2⁶⁰. */
const ENDLESS = 2_147_483_648 * 536_870_912;

/** Angle whose tangent is `x`, −π/2 to π/2. */
export function atan(x: number): number {
  if (x === 0) return x;
  const size = Math.abs(x);
  if (size < 0.4375) return x - x * bend(x);
  const angle = steepAngle(size);
  return x < 0 ? -angle : angle;
}

/** Angle of the direction (x, y), −π to π. */
export function atan2(y: number, x: number): number {
  if (Number.isNaN(x) || Number.isNaN(y)) return Number.NaN;
  const isDown = y < 0 || Object.is(y, -0);
  const isBack = x < 0 || Object.is(x, -0);
  const size = sizeOfAngle(Math.abs(y), Math.abs(x), isBack);
  return isDown ? -size : size;
}

/** Angle of a direction up and right, or of its mirror image up and left. */
function sizeOfAngle(up: number, across: number, isBack: boolean): number {
  if (up === 0) return isBack ? Math.PI : 0;
  const ratio = up / across;
  if (ratio > ENDLESS) return Math.PI / 2;
  const angle = atan(Number.isNaN(ratio) ? 1 : ratio);
  return isBack ? Math.PI - (angle - HALF_TURN_TAIL) : angle;
}

/** From the nearest of four angles on, each given with its tail. */
function steepAngle(size: number): number {
  if (size < 0.6875)
    return angleBeyond(0.4636476090008061, 2.2698777452961687e-17, (2 * size - 1) / (2 + size));
  if (size < 1.1875) return angleBeyond(0.7853981633974483, 3.061616997868383e-17, (size - 1) / (size + 1));
  if (size < 2.4375)
    return angleBeyond(0.982793723247329, 1.3903311031230998e-17, (size - 1.5) / (1 + 1.5 * size));
  return angleBeyond(1.5707963267948966, 6.123233995736766e-17, -1 / size);
}

function angleBeyond(angle: number, tail: number, x: number): number {
  return angle - (x * bend(x) - tail - x);
}

/** Minimax polynomial of 1 − atan(x) / x. */
function bend(x: number): number {
  const z = x * x;
  const w = z * z;
  const even =
    z *
    (0.3333333333333293 +
      w *
        (0.14285714272503466 +
          w *
            (0.09090887133436507 +
              w * (0.06661073137387531 + w * (0.049768779946159324 + w * 0.016285820115365782)))));
  const odd =
    w *
    (-0.19999999999876483 +
      w *
        (-0.11111110405462356 +
          w * (-0.0769187620504483 + w * (-0.058335701337905735 + w * -0.036531572744216916))));
  return even + odd;
}

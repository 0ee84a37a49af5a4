/**
 * Arc cosine with the same bits on every engine, right to within one unit in the last place.
 *
 * After e_acos.c of fdlibm 5.3. Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved. Permission to use, copy,
 * modify, and distribute this software is freely granted, provided that this notice is preserved.
 */

const QUARTER_TURN = Math.PI / 2;
const QUARTER_TURN_TAIL = 6.123233995736766e-17;

/** Angle whose cosine is `x`, 0 to π; NaN beyond −1 to 1. */
export function acos(x: number): number {
  if (Math.abs(x) < 0.5) return QUARTER_TURN - (x - (QUARTER_TURN_TAIL - x * bend(x * x)));
  if (x <= -1) return x === -1 ? Math.PI : Number.NaN;
  if (x < 0) {
    const squared = (1 + x) * 0.5;
    const half = Math.sqrt(squared);
    return Math.PI - 2 * (half + (bend(squared) * half - QUARTER_TURN_TAIL));
  }
  const squared = (1 - x) * 0.5;
  const half = Math.sqrt(squared);
  if (half === 0) return 0;
  const short = Math.fround(half);
  const left = (squared - short * short) / (half + short);
  return 2 * (short + (bend(squared) * half + left));
}

/** Rational approximation of (asin(√z) − √z) / √z. */
function bend(z: number): number {
  const above =
    z *
    (0.16666666666666666 +
      z *
        (-0.3255658186224009 +
          z *
            (0.20121253213486293 +
              z * (-0.04005553450067941 + z * (0.0007915349942898145 + z * 0.00003479331075960212)))));
  const below =
    1 +
    z * (-2.403394911734414 + z * (2.0209457602335057 + z * (-0.6882839716054533 + z * 0.07703815055590194)));
  return above / below;
}

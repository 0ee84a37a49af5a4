/**
 * e to a power, with the same bits on every engine, right to within one unit in the last place.
 *
 * After e_exp.c of fdlibm 5.3. Copyright (C) 2004 by Sun Microsystems, Inc. All rights reserved. Permission to use, copy,
 * modify, and distribute this software is freely granted, provided that this notice is preserved.
 */

const HALVINGS_PER_E = Math.LOG2E;
/** ln 2 in two parts: multiples of the first are exact. */
const LN_2 = 0.6931471803691238;
const LN_2_TAIL = 1.9082149292705877e-10;

/** Beyond these the result is infinite, or nothing. */
const MOST = 709.782712893384;
const LEAST = -745.1332191019411;

export function exp(x: number): number {
  if (!(x <= MOST)) return Number.isNaN(x) ? x : Number.POSITIVE_INFINITY;
  if (x < LEAST) return 0;
  const count = Math.abs(x) > 0.5 * Math.LN2 ? Math.round(x * HALVINGS_PER_E) : 0;
  const high = x - count * LN_2;
  const low = count * LN_2_TAIL;
  const rest = high - low;
  const z = rest * rest;
  const c =
    rest -
    z *
      (0.16666666666666602 +
        z *
          (-0.0027777777777015593 +
            z * (0.00006613756321437934 + z * (-0.0000016533902205465252 + z * 4.1381367970572385e-8))));
  return doubled(1 - (low - (rest * c) / (2 - c) - high), count);
}

/** Times a power of two, in steps that stay within the range of numbers. */
function doubled(value: number, times: number): number {
  let product = value;
  const factor = times < 0 ? 0.5 : 2;
  for (let left = Math.abs(times); left > 0; left -= 1) product *= factor;
  return product;
}

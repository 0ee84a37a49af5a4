/**
 * An angle as whole quarter turns and the rest, within an eighth of a turn either way; the rest is a sum of two numbers,
 * exact to more than 100 bits. Up to 2²⁰ quarter turns π/2 is taken away in parts of 33 bits, whose multiples are exact
 * (Cody and Waite); beyond that the whole quarter turns are counted in integers (Payne and Hanek).
 *
 * After e_rem_pio2.c of fdlibm 5.3. Copyright (C) 1993, 2004 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted, provided that this notice is preserved.
 */

export interface QuarterTurns {
  /** 0 to 3: whole quarter turns, counter-clockwise, but for full turns. */
  readonly quarters: number;
  /** Radians that are left: `rest + tail`. */
  readonly rest: number;
  readonly tail: number;
}

const QUARTERS_PER_RADIAN = 0.6366197723675814;

/** π/2 in three parts of 33 bits, each with what comes after it. */
const FIRST = 1.5707963267341256;
const AFTER_FIRST = 6.077100506506192e-11;
const SECOND = 6.077100506303966e-11;
const AFTER_SECOND = 2.0222662487959506e-21;
const THIRD = 2.0222662487111665e-21;
const AFTER_THIRD = 8.4784276603689e-32;

/** Shares of the angle below which so much has cancelled that the next part of π/2 counts: 2⁻¹⁶, 2⁻⁴⁹. */
const MUCH_CANCELLED = 1 / 65_536;
const MORE_CANCELLED = MUCH_CANCELLED / 8_589_934_592;

/** Radians up to which multiples of a part are exact: 2²⁰ quarter turns, less a few. */
const MOST_BY_PARTS = 1_647_000;

/** NaN for what is no finite angle. */
export function quarterTurns(angle: number): QuarterTurns {
  if (!(Math.abs(angle) <= MOST_BY_PARTS)) return countedTurns(angle);
  const count = Math.round(angle * QUARTERS_PER_RADIAN);
  let left = angle - count * FIRST;
  let after = count * AFTER_FIRST;
  let rest = left - after;
  if (Math.abs(rest) < Math.abs(angle) * MUCH_CANCELLED) {
    const before = left;
    left = before - count * SECOND;
    after = count * AFTER_SECOND - (before - left - count * SECOND);
    rest = left - after;
  }
  if (Math.abs(rest) < Math.abs(angle) * MORE_CANCELLED) {
    const before = left;
    left = before - count * THIRD;
    after = count * AFTER_THIRD - (before - left - count * THIRD);
    rest = left - after;
  }
  return { quarters: count & 3, rest, tail: left - rest - after };
}

/** ⌊2/π · 2¹²⁸⁰⌋ and ⌊π/2 · 2¹⁶⁰⌋. */
const TWO_OVER_PI = BigInt(
  '0x' +
    'a2f9836e4e441529fc2757d1f534ddc0db6295993c439041fe5163abdebbc561b7246e3a424dd2e0' +
    '06492eea09d1921cfe1deb1cb129a73ee88235f52ebb4484e99c7026b45f7e413991d639835339f4' +
    '9c845f8bbdf9283b1ff897ffde05980fef2f118b5a0a6d1f6d367ecf27cb09b74f463f669e5fea2d' +
    '7527bac7ebe5f17b3d0739f78a5292ea6bfb5fb11f8d5d0856033046fc7b6babf0cfbc209af4361d',
);
const HALF_PI = 0x1921fb54442d18469898cc51701b839a252049c11n;
const TWO_OVER_PI_BITS = 1280n;
const HALF_PI_BITS = 160n;
/** Enough of the rest for `rest + tail`. */
const KEPT_BITS = 200n;
const KEPT = Number(1n << KEPT_BITS);

function countedTurns(angle: number): QuarterTurns {
  if (!Number.isFinite(angle)) return { quarters: 0, rest: Number.NaN, tail: 0 };
  let whole = angle;
  let halvings = 0n;
  for (; !Number.isInteger(whole); halvings += 1n) whole *= 2;
  const bits = TWO_OVER_PI_BITS + halvings;
  const turned = BigInt(whole) * TWO_OVER_PI;
  const count = (turned + (1n << (bits - 1n))) >> bits;
  const left = (turned - (count << bits)) >> (bits - KEPT_BITS);
  const radians = (left * HALF_PI) >> HALF_PI_BITS;
  const rest = Number(radians);
  return {
    quarters: Number(BigInt.asUintN(2, count)),
    rest: rest / KEPT,
    tail: Number(radians - BigInt(rest)) / KEPT,
  };
}

/**
 * Tangent with the same bits on every engine, right to within one unit in the last place.
 *
 * After k_tan.c and s_tan.c of fdlibm 5.3. Copyright (C) 1993, 2004 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted, provided that this notice is preserved.
 */
import { quarterTurns } from './quarter-turns.ts';

const EIGHTH_TURN = Math.PI / 4;
const EIGHTH_TURN_TAIL = 3.061616997868383e-17;

/** Beyond this the polynomial runs from an eighth of a turn down. */
const STEEP = 0.67434;

export function tan(angle: number): number {
  if (angle === 0) return angle;
  if (Math.abs(angle) <= EIGHTH_TURN) return smallTangent(angle, 0, false);
  const { quarters, rest, tail } = quarterTurns(angle);
  return smallTangent(rest, tail, (quarters & 1) === 1);
}

/** tan(x + tail) up to an eighth of a turn; a quarter turn on it is −1 over that. */
function smallTangent(x: number, tail: number, isQuarterOn: boolean): number {
  if (Math.abs(x) < STEEP) {
    const more = tangentBeyond(x, tail);
    return isQuarterOn ? minusInverse(x, more) : x + more;
  }
  const sign = x < 0 ? -1 : 1;
  const left = EIGHTH_TURN - sign * x + (EIGHTH_TURN_TAIL - sign * tail);
  const more = tangentBeyond(left, 0);
  const whole = left + more;
  const one = isQuarterOn ? -1 : 1;
  return sign * (one - 2 * (left - ((whole * whole) / (whole + one) - more)));
}

/** Minimax polynomial of tan(x + tail) − x. */
function tangentBeyond(x: number, tail: number): number {
  const z = x * x;
  const w = z * z;
  const odd =
    0.13333333333320124 +
    w *
      (0.021869488294859542 +
        w *
          (0.0035920791075913124 +
            w * (0.0005880412408202641 + w * (0.00007817944429395571 + w * -0.000018558637485527546))));
  const even =
    z *
    (0.05396825397622605 +
      w *
        (0.0088632398235993 +
          w *
            (0.0014562094543252903 +
              w * (0.0002464631348184699 + w * (0.00007140724913826082 + w * 0.00002590730518636337)))));
  const s = z * x;
  return tail + z * (s * (odd + even) + tail) + 0.3333333333333341 * s;
}

/** −1 / (x + more), by parts short enough that their products are exact. */
function minusInverse(x: number, more: number): number {
  const whole = x + more;
  const short = Math.fround(whole);
  const left = more - (short - x);
  const inverse = -1 / whole;
  const shortInverse = Math.fround(inverse);
  return shortInverse + inverse * (1 + shortInverse * short + shortInverse * left);
}

/**
 * Sine and cosine with the same bits on every engine, right to within one unit in the last place.
 *
 * After k_sin.c, k_cos.c, s_sin.c and s_cos.c of fdlibm 5.3. Copyright (C) 1993 by Sun Microsystems, Inc. All rights
 * reserved. Permission to use, copy, modify, and distribute this software is freely granted, provided that this notice is
 * preserved.
 */
import { quarterTurns } from './quarter-turns.ts';

const EIGHTH_TURN = Math.PI / 4;

export function sin(angle: number): number {
  if (Math.abs(angle) <= EIGHTH_TURN) return smallSine(angle, 0);
  const { quarters, rest, tail } = quarterTurns(angle);
  return waveAt(quarters, rest, tail);
}

export function cos(angle: number): number {
  if (Math.abs(angle) <= EIGHTH_TURN) return smallCosine(angle, 0);
  const { quarters, rest, tail } = quarterTurns(angle);
  return waveAt(quarters + 1, rest, tail);
}

/** Sine of so many quarter turns and a rest. */
function waveAt(quarters: number, rest: number, tail: number): number {
  const size = (quarters & 1) === 0 ? smallSine(rest, tail) : smallCosine(rest, tail);
  return (quarters & 2) === 0 ? size : -size;
}

/** Minimax polynomial of sin(x + tail) up to an eighth of a turn. */
function smallSine(x: number, tail: number): number {
  if (x === 0) return x;
  const z = x * x;
  const w = z * z;
  const r =
    0.00833333333332249 +
    z * (-0.0001984126982985795 + z * 0.0000027557313707070068) +
    z * w * (-2.5050760253406863e-8 + z * 1.58969099521155e-10);
  const v = z * x;
  if (tail === 0) return x + v * (-0.16666666666666632 + z * r);
  return x - (z * (0.5 * tail - v * r) - tail - v * -0.16666666666666632);
}

/** Minimax polynomial of cos(x + tail) up to an eighth of a turn. */
function smallCosine(x: number, tail: number): number {
  const z = x * x;
  const w = z * z;
  const r =
    z * (0.0416666666666666 + z * (-0.001388888888887411 + z * 0.00002480158728947673)) +
    w * w * (-2.7557314351390663e-7 + z * (2.087572321298175e-9 + z * -1.1359647557788195e-11));
  const half = 0.5 * z;
  const most = 1 - half;
  return most + (1 - most - half + (z * r - x * tail));
}

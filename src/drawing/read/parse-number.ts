/**
 * A strict decimal number out of bytes: sign, digits, point, exponent, nothing else. `10,5`, `1.0D+02`, `nan` and `12mm` are
 * no numbers (NaN); a prefix is never taken for the whole. The result is the correctly rounded double: up to 15 digits and
 * 22 decimals digits and power are exact doubles, so one division rounds once; all else goes through Number.
 */
import { powerOfTen } from '#maths/decade.ts';

const POWERS = Array.from({ length: 23 }, (_, power) => powerOfTen(power));
const MINUS = 45;
const PLUS = 43;
const POINT = 46;
const ZERO = 48;

export function parseNumber(bytes: Uint8Array, from: number, to: number): number {
  let at = from;
  const sign = bytes[at];
  if (sign === MINUS || sign === PLUS) at++;
  // Digits in all, and those after leading zeros.
  let digits = 0;
  let significant = 0;
  let mantissa = 0;
  let decimals = -1;
  for (; at < to; at++) {
    const digit = (bytes[at] as number) - ZERO;
    if (digit >= 0 && digit <= 9) {
      digits++;
      mantissa = mantissa * 10 + digit;
      if (mantissa > 0) significant++;
      if (decimals >= 0) decimals++;
    } else if (bytes[at] === POINT && decimals < 0) decimals = 0;
    else break;
  }
  if (digits === 0) return Number.NaN;
  if (at < to || significant > 15 || decimals > 22) return parseSlowly(bytes, from, to);
  const value = decimals > 0 ? mantissa / (POWERS[decimals] as number) : mantissa;
  return sign === MINUS ? -value : value;
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

function parseSlowly(bytes: Uint8Array, from: number, to: number): number {
  if (to - from > 400) return Number.NaN;
  let text = '';
  for (let at = from; at < to; at++) text += String.fromCharCode(bytes[at] as number);
  return NUMBER.test(text) ? Number(text) : Number.NaN;
}

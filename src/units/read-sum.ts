/**
 * Reads a length as it may be worked out while it is typed: `3.2 - 0.9`, `.125 - .032`, `2 * 1.6`, `1/8 in - 0.8 mm`, `6.4 / 2`.
 * Each length may wear its own unit; what multiplies or divides it is a bare figure.
 */
import { readFigure } from './read-figure.ts';
import { readLength } from './read-length.ts';
import type { ShownUnit } from './show-length.ts';

/** Between two lengths: after a digit, a unit or a quote, so that a sign of its own stays with its length. */
const PLUS_OR_MINUS = /(?<=[\d.,"a-z])\s*([+\-−])\s*(?=[\d.,])/i;

/** Millimetres, or undefined where it is no length. */
export function readSum(text: string, shown: ShownUnit): number | undefined {
  const [first = '', ...rest] = text.trim().split(PLUS_OR_MINUS);
  let sum = readProduct(first, shown);
  for (let index = 0; index < rest.length; index += 2) {
    const term = readProduct(rest[index + 1] ?? '', shown);
    if (sum === undefined || term === undefined) return undefined;
    sum += rest[index] === '+' ? term : -term;
  }
  return sum;
}

/** A length, times bare figures. */
function readProduct(text: string, shown: ShownUnit): number | undefined {
  const [first = '', ...rest] = text.split(/\s*[*×]\s*/);
  let product = readQuotient(first, shown);
  for (const each of rest) {
    const figure = readFigure(each);
    if (product === undefined || figure === undefined) return undefined;
    product *= figure;
  }
  return product;
}

/** A length, or one divided by a bare figure. A fraction such as `3/32` is a length by itself. */
function readQuotient(text: string, shown: ShownUnit): number | undefined {
  const whole = readLength(text, shown);
  const [length, by] = text.split(/\s*\/\s*/).slice(0, 2);
  if (whole !== undefined || length === undefined || by === undefined) return whole;
  const [dividend, divisor] = [readLength(length, shown), readFigure(by)];
  if (dividend === undefined || divisor === undefined || divisor === 0) return undefined;
  return text.split('/').length > 2 ? undefined : dividend / divisor;
}

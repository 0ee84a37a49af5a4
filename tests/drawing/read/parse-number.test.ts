/** Numbers are read as JavaScript's own parser reads them, to the last bit, and what is no plain decimal number is none. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseNumber } from '#drawing/read/parse-number.ts';
import { bytesOf } from '#support/drawings/raw-drawing.ts';

function parse(text: string): number {
  return parseNumber(bytesOf(text), 0, text.length);
}

test('any double, in the ways programs write it, comes back to the last bit', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.nat(20), (value, digits) => {
      const spellings = [String(value), value.toExponential(), value.toPrecision(digits + 1)];
      if (Math.abs(value) < 1e21) spellings.push(value.toFixed(digits));
      for (const spelling of spellings) expect(parse(spelling)).toBe(Number(spelling));
    }),
    { numRuns: 2000 },
  );
});

test('six-decimal coordinates', () => {
  fc.assert(
    fc.property(fc.integer({ min: -2_000_000_000, max: 2_000_000_000 }), (millionths) => {
      const text = (millionths / 1e6).toFixed(6);
      expect(parse(text)).toBe(Number(text));
    }),
    { numRuns: 2000 },
  );
});

test('what is no plain decimal number is NaN', () => {
  for (const text of [
    '',
    '-',
    '.',
    '+.',
    '1,5',
    '1.2.3',
    '1e',
    '1e+',
    '0x1f',
    'Infinity',
    'nan',
    '1 2',
    '1_000',
    '5mm',
    '--1',
    '1D2',
    '٣',
  ]) {
    expect(parse(text), text).toBeNaN();
  }
});

test('any text: a number exactly when the grammar of decimal numbers says so', () => {
  const letters = fc.constantFrom('0', '1', '9', '.', '-', '+', 'e', 'E', ' ', ',');
  fc.assert(
    fc.property(fc.array(letters, { maxLength: 9 }), (list) => {
      const text = list.join('');
      const isNumber = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(text);
      expect(parse(text)).toBe(isNumber ? Number(text) : Number.NaN);
    }),
    { numRuns: 3000 },
  );
});

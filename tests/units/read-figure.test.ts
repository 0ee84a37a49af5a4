import { expect, test } from 'vitest';
import { readFigure } from '#units/read-figure.ts';

test.each([
  ['1.05', 1.05],
  ['1,05', 1.05],
  ['  -0.3 ', -0.3],
  ['0', 0],
  ['2e-3', 0.002],
])('%j is %d', (text, value) => {
  expect(readFigure(text)).toBe(value);
});

test.each(['', '   ', ',', '1.2 mm', '1,2,3', 'Infinity', 'NaN'])('%j is no figure', (text) => {
  expect(readFigure(text)).toBeUndefined();
});

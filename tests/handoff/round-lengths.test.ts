import { expect, test } from 'vitest';
import { roundDown, roundUp, twoFigures } from '#handoff/round-lengths.ts';

test.each([
  [3.19, 3.1],
  [47.8, 47],
  [0.0478, 0.047],
  [6, 6],
  // 29 hundredths, which by doubles are 28.999999999999996.
  [0.29, 0.29],
  [1299, 1200],
])('of a factor of %d two figures are %d, never above it', (factor, figures) => {
  expect(twoFigures(factor)).toBe(figures);
});

test.each([
  [1, 1, 1],
  [1.3, 2, 1],
  [2, 2, 2],
  [2.1, 5, 2],
  [4.9, 5, 2],
  [5, 5, 5],
  [7, 10, 5],
  [0.03, 0.05, 0.02],
  [0.0007, 0.001, 0.0005],
  [130, 200, 100],
])('a length of %d is rounded up to %d and down to %d', (length, up, down) => {
  expect([roundUp(length), roundDown(length)]).toEqual([up, down]);
});

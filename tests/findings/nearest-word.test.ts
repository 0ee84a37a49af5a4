import { expect, test } from 'vitest';
import { nearestWord } from '#findings/nearest-word.ts';

const LAYERS = ['TRIM', 'POCKETS', 'BAYS', 'DIMS'];

test.each([
  ['POCKET', 'POCKETS'],
  ['pockets', 'POCKETS'],
  ['POCKTES', 'POCKETS'],
  ['BAY', 'BAYS'],
  ['TRIMM', 'TRIM'],
])('%s means %s', (typed, meant) => {
  expect(nearestWord(typed, LAYERS)).toBe(meant);
});

test.each(['', 'WINDOWS', 'X', 'STATION-01'])('%j means none of them', (typed) => {
  expect(nearestWord(typed, LAYERS)).toBeUndefined();
});

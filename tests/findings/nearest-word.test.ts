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

test('a layer of one letter is near to nothing', () => {
  expect(nearestWord('A', ['0', 'B'])).toBeUndefined();
  expect(nearestWord('TRIM', ['0', 'T'])).toBeUndefined();
  expect(nearestWord('a', ['A'])).toBe('A');
});

import { expect, test } from 'vitest';
import { sealedWords, stageWords } from '#handoff/stage-words.ts';

test('stages are written as a person would write them', () => {
  expect([[2], [2, 3], [2, 4, 5], [2, 3, 4]].map(stageWords)).toEqual([
    'stage 2',
    'stages 2 and 3',
    'stages 2, 4 and 5',
    'stages 2 to 4',
  ]);
  expect(sealedWords([])).toBe('nothing is sealed any more');
  expect(sealedWords([3])).toBe('stage 3 stays sealed');
  expect(sealedWords([3, 4])).toBe('stages 3 and 4 stay sealed');
});

import { expect, test } from 'vitest';
import { fitSection } from '#handoff/fit-section.ts';

test('a long cut fills the width, its heights larger by two figures that fit: 5.5 times of 5.56', () => {
  // 100 mm in 180: 1.8 each; 5 mm of metal are then 9, and 50 of height hold 5.56 times as much.
  expect(fitSection({ length: 100, thickness: 5, width: 180, height: 50 })).toEqual({
    along: 1.8,
    exaggeration: 5.5,
  });
});

test('a cut so short that its heights have no room is drawn narrower, at equal scale', () => {
  const { along, exaggeration } = fitSection({ length: 4, thickness: 6, width: 180, height: 51 });
  expect(along).toBeCloseTo(51 / 6, 12);
  expect(exaggeration).toBe(1);
});

/** Medians of counts by hand: odd, even, with a stray, out of order. */
import { describe, expect, test } from 'vitest';
import { median, middleTwo } from '#maths/median.ts';

describe('the median', () => {
  test('of an odd count is the one in the middle, however they come', () => {
    expect(median([3.4, 1.2, 2.5])).toBe(2.5);
    expect(middleTwo([3.4, 1.2, 2.5])).toEqual([2.5, 2.5]);
  });

  test('of an even count lies half-way between the middle two', () => {
    expect(median([4, 1, 2.5, 900])).toBe(3.25);
    expect(middleTwo([4, 1, 2.5, 900])).toEqual([2.5, 4]);
  });

  test('sorts by value, not as text, and leaves what it was given in its order', () => {
    const figures = [10, 9, 100];
    expect(median(figures)).toBe(10);
    expect(figures).toEqual([10, 9, 100]);
  });

  test('of none is none', () => {
    expect(median([])).toBeUndefined();
    expect(middleTwo([])).toBeUndefined();
  });
});

import { describe, expect, it } from 'vitest';
import { readSum } from '#units/read-sum.ts';

describe('a length worked out while it is typed', () => {
  it.each([
    ['2.2', 2.2],
    ['3.2 - 0.9', 2.3],
    ['3.2-0.9', 2.3],
    ['3,2 − 0,9', 2.3],
    ['1.6+0.05-0.02', 1.63],
    ['2 * 1.6', 3.2],
    ['6.4 / 2', 3.2],
    // 1/8 in is 3.175 mm.
    ['1/8 in - 0.8 mm', 2.375],
    ['1 1/4" - 1 in', 6.35],
    ['3/32 in * 2', 4.7625],
    ['-0.3', -0.3],
  ])('%s', (text, millimetres) => expect(readSum(text, 'mm')).toBeCloseTo(millimetres, 9));

  it('is in the unit on show where it names none', () => {
    expect(readSum('.125 - .032', 'in')).toBeCloseTo(2.3622, 9);
  });

  it.each(['', 'two', '3.2 -', '2 *', '1.6 / 0', '2 * 3 mm', '1 + + 2', '3.2 - x'])(
    'and is none: %s',
    (text) => {
      expect(readSum(text, 'mm')).toBeUndefined();
    },
  );
});

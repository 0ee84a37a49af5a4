import { describe, expect, it } from 'vitest';
import { readLength } from '#units/read-length.ts';
import { lengthFigure, showArea, showLength } from '#units/show-length.ts';

describe('a length as typed', () => {
  it.each([
    ['2.2', 2.2],
    ['2,2', 2.2],
    [' .5 ', 0.5],
    ['2.2 mm', 2.2],
    // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959)
    ['0.087in', 2.2098],
    ['3/32 in', 2.38125],
    ['1 1/4"', 31.75],
    ['-1', -1],
    ['3.', 3],
  ])('"%s" is %f mm where millimetres are on show', (text, millimetres) => {
    expect(readLength(text, 'mm')).toBeCloseTo(millimetres, 9);
  });

  it('takes the unit on show where it names none, and its own where it does', () => {
    expect(readLength('0.1', 'in')).toBeCloseTo(2.54, 12);
    expect(readLength('3/32', 'in')).toBeCloseTo(2.38125, 12);
    expect(readLength('2 mm', 'in')).toBe(2);
  });

  it.each(['', 'two', '1.2.3', '1/0', '2 2', '1 cm', '--3', '5 5.5 in', 'NaN', '1e3'])(
    '"%s" is no length',
    (text) => {
      expect(readLength(text, 'mm')).toBeUndefined();
    },
  );
});

describe('a length on show', () => {
  it('is rounded to what the unit can carry, and read back within that', () => {
    expect(lengthFigure(2.2, 'mm')).toBe('2.20');
    expect(lengthFigure(2.2, 'in')).toBe('0.0866');
    expect(lengthFigure(-0.001, 'mm')).toBe('0.00');
    expect(showLength(1.6, 'mm')).toBe('1.60\u00a0mm');
    expect(showArea(1234, 'mm')).toBe('12.3\u00a0cm²');
    expect(showArea(645.16, 'in')).toBe('1.00\u00a0in²');
  });
});

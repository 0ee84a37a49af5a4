import { expect, test } from 'vitest';
import { lengthFigure, showArea, showLength, showMinutes } from '#units/show-length.ts';

test('two places of a millimetre, four of an inch, one more where a micrometer reads', () => {
  expect([lengthFigure(2.4567, 'mm'), lengthFigure(2.4567, 'mm', 1)]).toEqual(['2.46', '2.457']);
  expect([lengthFigure(2.54, 'in'), lengthFigure(3, 'in', 1)]).toEqual(['0.1000', '0.11811']);
  expect(showLength(12.345, 'in')).toBe('0.4860\u00a0in');
});

test('nothing has no sign, less than nothing has one', () => {
  expect([lengthFigure(-0.001, 'mm'), lengthFigure(-0.01, 'mm'), lengthFigure(-1.5, 'mm')]).toEqual([
    '0.00',
    '-0.01',
    '-1.50',
  ]);
});

test('areas in square centimetres or inches: two places up to 10, one from there', () => {
  expect(showArea(812.4, 'mm')).toBe('8.12\u00a0cm²');
  expect(showArea(1000, 'mm')).toBe('10.0\u00a0cm²');
  expect(showArea(12_345, 'mm')).toBe('123.5\u00a0cm²');
  // 6.4516 cm² a square inch.
  expect(showArea(645.16 * 3.5, 'in')).toBe('3.50\u00a0in²');
});

test('minutes to a tenth', () => {
  expect(showMinutes(67.46)).toBe('67.5\u00a0min');
});

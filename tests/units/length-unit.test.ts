/** The units of `$INSUNITS` against their definitions, written out here independently. */
import { expect, test } from 'vitest';
import {
  insunitsOf,
  LENGTH_UNITS,
  type LengthUnit,
  millimetresIn,
  unitName,
  unitOfInsunits,
} from '#units/length-unit.ts';

/** Metres in one unit. Sources: yard and pound agreement 1959 (foot 0.3048 m); NIST Handbook 44, appendix C (survey foot 0.3048006096 m); BIPM, The International System of Units, 9th edition, tables 7 and 8 (prefixes, astronomical unit, ångström 0.1 nm); IAU: light year 9.4607e15 m, parsec 3.0857e16 m. */
const METRES: readonly (readonly [insunits: number, unit: LengthUnit, metres: number])[] = [
  [1, 'in', 0.0254],
  [2, 'ft', 0.3048],
  [3, 'mi', 1609.344],
  [4, 'mm', 1e-3],
  [5, 'cm', 1e-2],
  [6, 'm', 1],
  [7, 'km', 1e3],
  [8, 'uin', 2.54e-8],
  [9, 'mil', 2.54e-5],
  [10, 'yd', 0.9144],
  [11, 'angstrom', 1e-10],
  [12, 'nm', 1e-9],
  [13, 'um', 1e-6],
  [14, 'dm', 0.1],
  [15, 'dam', 10],
  [16, 'hm', 100],
  [17, 'Gm', 1e9],
  [18, 'au', 149_597_870_700],
  [19, 'ly', 9.4607e15],
  [20, 'pc', 3.0857e16],
  [21, 'us-ft', 0.3048006096],
  [22, 'us-in', 0.0254000508],
  [23, 'us-yd', 0.9144018288],
  [24, 'us-mi', 1609.347219],
];

test.each(METRES)('$INSUNITS %i is %s', (insunits, unit, metres) => {
  expect(insunitsOf(unit)).toBe(insunits);
  expect(unitOfInsunits(insunits)).toBe(unit);
  expect(Math.abs(millimetresIn(unit) / (metres * 1000) - 1)).toBeLessThan(1e-5);
  expect(unitName(unit)).not.toBe('');
});

test('units have names in full', () => {
  expect([unitName('in'), unitName('ft'), unitName('mm'), unitName('us-ft')]).toEqual([
    'inch',
    'foot',
    'millimetre',
    'US survey foot',
  ]);
});

test('inch and metric units are exact', () => {
  expect([millimetresIn('in'), millimetresIn('ft'), millimetresIn('mm'), millimetresIn('m')]).toEqual([
    25.4, 304.8, 1, 1000,
  ]);
});

test('all 24 are there, and 0 and strangers name none', () => {
  expect(LENGTH_UNITS.length).toBe(24);
  for (const value of [0, -1, 25, 1.5, Number.NaN]) expect(unitOfInsunits(value)).toBeUndefined();
});

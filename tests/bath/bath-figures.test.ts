import { describe, expect, test } from 'vitest';
import { hydrogenLitresOf } from '#bath/aluminium-chemistry.ts';
import { couponRate } from '#bath/coupon-rate.ts';
import { etchFactorAt } from '#bath/etch-factor.ts';
import { etchMinutes } from '#bath/etch-minutes.ts';
import { knownFigures } from '#bath/known-figures.ts';
import { sheetTolerance } from '#bath/sheet-tolerance.ts';

const { alloys: ALLOYS, baths: BATHS } = knownFigures();

function bathRate(id: string): number {
  const rate = BATHS.find((bath) => bath.id === id)?.rate?.value;
  expect(rate).toBeDefined();
  return rate ?? Number.NaN;
}

function alloy(id: string) {
  const found = ALLOYS.find((each) => each.id === id);
  expect(found).toBeDefined();
  return found;
}

describe('minutes in the bath', () => {
  test('aluminium at 0.178 cm/h to 2.00 mm takes 67.4 min', () => {
    // Rate: common practice. 2.00 mm / (1.78 mm / 60 min) = 67.416 min.
    expect(etchMinutes({ depth: 2, rate: bathRate('caustic-aluminium') })).toBeCloseTo(67.416, 3);
  });
  test('magnesium at 0.46 cm/h to 2.00 mm takes 26.1 min', () => {
    // Rate: common practice.
    expect(etchMinutes({ depth: 2, rate: bathRate('dilute-acid-magnesium') })).toBeCloseTo(26.087, 3);
  });
  test('2.5 mm at 0.0513 mm/min takes 48.73 min', () => {
    // Published worked example of a chemical-milling manual.
    expect(etchMinutes({ depth: 2.5, rate: 0.0513 })).toBeCloseTo(48.73, 2);
  });
  test('a pocket 17 mm deep at 0.025 mm/min takes 680 min', () => {
    // Published textbook problem on the chemical milling of a 400 × 200 mm pocket.
    expect(etchMinutes({ depth: 17, rate: 0.025 })).toBeCloseTo(680, 9);
  });
});

describe('a coupon', () => {
  test('bare on both faces from 0.1000 in to 0.0940 in in 4 min shows 0.00075 in/min a surface', () => {
    // Glass, Measurement of Pre-penetrant Etch Rate, Materials Evaluation 66(12) (2008): (T0 − TF) / (2 t).
    expect(couponRate({ before: 0.1, after: 0.094, minutes: 4, faces: 2 })).toBeCloseTo(0.00075, 10);
  });
  test('bare on one face moves twice as fast for the same loss', () => {
    expect(couponRate({ before: 0.1, after: 0.094, minutes: 4, faces: 1 })).toBeCloseTo(0.0015, 10);
  });
});

describe('hydrogen from aluminium in caustic soda', () => {
  test('1 kg gives 1.246 m³ at 0 °C and 101.325 kPa', () => {
    // 2 Al + 6 H₂O + 2 NaOH → 2 NaAl(OH)₄ + 3 H₂ with standard atomic weights (IUPAC) and the ideal gas: 55.59 mol.
    expect(hydrogenLitresOf(1000) / 1000).toBeCloseTo(1.246, 3);
    const mol = (1000 / 26.981_538_4) * 1.5;
    expect(hydrogenLitresOf(1000)).toBeCloseTo((mol * 8.314_462_618 * 273.15) / 101.325, 0);
  });
});

describe('sheet tolerance as delivered', () => {
  // EN 485-4 (1994), cold rolled, alloy group II, width over 1600 to 2000 mm.
  test.each([
    [0.8, 0.1],
    [1, 0.1],
    [1.6, 0.15],
    [3, 0.19],
    [4.06, 0.25],
    [6, 0.26],
  ])('of %f mm 2024 sheet is ± %f mm', (thickness, tolerance) => {
    expect(sheetTolerance(alloy('al-2024-t3'), thickness)?.value).toBe(tolerance);
  });
  test('is not known outside the table, nor for metals that it does not hold', () => {
    expect(sheetTolerance(alloy('al-2024-t3'), 0.79)).toBeUndefined();
    expect(sheetTolerance(alloy('al-2024-t3'), 6.01)).toBeUndefined();
    expect(sheetTolerance(alloy('ti-6al-4v'), 2)).toBeUndefined();
    expect(sheetTolerance(undefined, 2)).toBeUndefined();
  });
});

describe('an etch factor table', () => {
  const table = [
    [1, 0.8],
    [3, 1.2],
  ] as const;
  test('is linear between its rows and held beyond them', () => {
    expect([0, 1, 1.5, 2, 3, 9].map((depth) => etchFactorAt(table, depth))).toEqual([
      0.8, 0.8, 0.9, 1, 1.2, 1.2,
    ]);
  });
});

describe('built-in figures', () => {
  test('each says where it comes from, and is of a size that a metal or a bath can have', () => {
    for (const { density } of ALLOYS) {
      expect(density.source).not.toBe('');
      // Lightest and heaviest structural metals: magnesium 1.74, nickel alloys and copper below 9 g/cm³.
      expect(density.value).toBeGreaterThan(1.7);
      expect(density.value).toBeLessThan(9);
    }
    for (const { etchFactor, rate } of BATHS) {
      for (const figure of [etchFactor, rate]) if (figure !== undefined) expect(figure.source).not.toBe('');
    }
  });
  test('ids are unique and fit to be typed', () => {
    const ids = [...ALLOYS, ...BATHS].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  });
});

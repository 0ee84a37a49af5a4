import { describe, expect, test } from 'vitest';
import { hydrogenLitresOf } from '#bath/aluminium-chemistry.ts';
import { couponFactor, couponRate, surfaceRate } from '#bath/coupon.ts';
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
  const glass = { before: 0.1, after: 0.094, minutes: 4, faces: 2 } as const;
  test('bare on both faces from 0.1000 in to 0.0940 in in 4 min shows 0.00075 in/min a surface', () => {
    // Glass, Measurement of Pre-penetrant Etch Rate, Materials Evaluation 66(12) (2008): (T0 − TF) / (2 t).
    expect(surfaceRate(glass)).toBeCloseTo(0.00075, 10);
    expect(couponRate([{ ...glass, gauge: 0.0002 }]).value).toBeCloseTo(0.00075, 10);
  });
  test('bare on one face moves twice as fast for the same loss', () => {
    expect(surfaceRate({ ...glass, faces: 1 })).toBeCloseTo(0.0015, 10);
  });

  const plate = { before: 3, after: 2.7, minutes: 10, faces: 1, gauge: 0.01 } as const;
  test('M5.5 alone is as sure as its gauge: ± 0.01 mm at both ends of 0.3 mm is ± 5.3 %', () => {
    // GUM 4.3.7: 0.01 / √3 a reading, two of them, 1.96 for 95 %: 0.0160 mm of 0.3 mm.
    const { value, plusMinus = 0 } = couponRate([plate]);
    expect(value).toBeCloseTo(0.03, 12);
    expect(plusMinus / value).toBeCloseTo(0.0533, 4);
  });
  test('M5.5 three have the standard error of their mean, by Student’s t of two degrees of freedom', () => {
    // Rates 0.028, 0.030, 0.032: s = 0.002, s/√3 = 0.0011547, t(95 %, 2) = 4.30 (GUM table G.2).
    const three = [2.72, 2.7, 2.68].map((after) => ({ ...plate, after, gauge: 0.0001 }));
    expect(couponRate(three)).toEqual({
      value: expect.closeTo(0.03, 12),
      plusMinus: expect.closeTo(0.0011547 * 4.3, 6),
    });
  });
  test('M5.5 two that scatter twice what their gauges explain have more than one degree of freedom between them', () => {
    // u = √2 · 0.01/√3 / 10 = 0.00081650, s = 2u: ν = 1 / (1 − 1/4)² = 1.78 (GUM G.2b), truncated to 1: t = 12.71.
    const two = (apart: number) => [plate, { ...plate, after: 2.7 - apart * 10 }];
    const u = 0.000_816_497;
    const error = (times: number) => (times * u) / Math.SQRT2;
    expect(couponRate(two(Math.SQRT2 * 2 * u)).plusMinus).toBeCloseTo(error(2) * 12.71, 5);
    // s² = 2u²: ν = 1 / (1/2)² = 4, t = 2.78; a hair under, so that rounding cannot fall on the row before.
    expect(couponRate(two(Math.SQRT2 * Math.sqrt(1.99) * u)).plusMinus).toBeCloseTo(
      error(Math.sqrt(1.99)) * 2.78,
      5,
    );
    // s under u: the gauges alone.
    expect(couponRate(two(Math.SQRT2 * 0.9 * u)).plusMinus).toBeCloseTo(error(1) * 1.96, 6);
  });
  test('M5.5 several that agree are no surer than their gauges', () => {
    const { plusMinus = 0 } = couponRate([plate, plate, plate, plate]);
    expect(plusMinus).toBeCloseTo((couponRate([plate]).plusMinus ?? 0) / 2, 10);
  });
  test('M5.5 an opening of 10.00 mm that is 11.60 mm wide at 0.80 mm depth shows an etch factor of 1.0', () => {
    const opening = { before: 10, after: 11.6, depth: 0.8, gauge: 0.02 };
    const shown = couponFactor([{ ...plate, opening }]);
    expect(shown?.value).toBeCloseTo(1, 12);
    // Widths √2 · 0.02/√3 over 1.6 mm, depth 0.01/√3 over 0.8 mm, root of squares, 1.96.
    expect(shown?.plusMinus).toBeCloseTo(
      1.96 * Math.hypot((Math.SQRT2 * 0.011547) / 1.6, 0.0057735 / 0.8),
      5,
    );
    expect(couponFactor([plate])).toBeUndefined();
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
  // EN 485-4 (1994), table 1, cold rolled, alloy group II; of a sheet of unknown width the column to 2000 mm.
  test.each([
    [0.8, 0.09],
    [1, 0.1],
    [1.6, 0.15],
    [3, 0.19],
    [4.06, 0.25],
    [6, 0.26],
    [6.35, 0.32],
    [50, 0.65],
  ])('of %f mm 2024 sheet is ± %f mm', (thickness, tolerance) => {
    expect(sheetTolerance(alloy('al-2024-t3'), thickness)?.value).toBe(tolerance);
  });
  test.each([
    [1, 1000, 0.05],
    [1.6, 1250, 0.12],
    [2.3, 1600, 0.15],
    [4.06, 1001, 0.22],
    [6, 2000, 0.26],
    [0.3, 1250, 0.05],
    [0.5, 2500, 0.1],
    [3.8, 2600, 0.34],
    [3.8, 3500, 0.38],
    [12.7, 1500, 0.43],
    [25, 3200, 0.68],
  ])('of %f mm sheet rolled %i mm wide is ± %f mm', (thickness, width, tolerance) => {
    expect(sheetTolerance(alloy('al-2024-t3'), thickness, width)?.value).toBe(tolerance);
  });
  test.each([
    [4, 3501],
    [0.3, 1601],
    [3.2, 2501],
    [40, 2501],
  ])('of %f mm sheet rolled %i mm wide is not known: the table leaves it open', (thickness, width) => {
    expect(sheetTolerance(alloy('al-2024-t3'), thickness, width)).toBeUndefined();
  });
  test('is not known outside the table, nor for metals that it does not hold', () => {
    expect(sheetTolerance(alloy('al-2024-t3'), 0.2)).toBeUndefined();
    expect(sheetTolerance(alloy('al-2024-t3'), 50.01)).toBeUndefined();
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

/** M9.6 the metal between the faces of a sheet. Undercut 1, so that every figure is a sum or a root by hand. */
import { describe, expect, test } from 'vitest';
import { rectangle } from '#support/geometry/shapes.ts';
import { checkTwoFaces, reported, type TwoFaces } from '#support/parts/check-two-faces.ts';

const WEBS = ['faces-web-too-thin', 'faces-web-at-worst', 'floors-meet'];
const near = (value: number) => expect.closeTo(value, 9);

describe('M9.6: floors behind each other', () => {
  /** Openings keep back by their depth: (2, 2) to (58, 38), and (13.1, −1.9) to (66.9, 27.9). */
  const over = (depths: readonly [number, number], more: Partial<TwoFaces> = {}) =>
    checkTwoFaces({
      near: [[rectangle(0, 0, 60, 40), 30, 20, { depth: depths[0] }]],
      far: [[rectangle(10, -5, 70, 31), 40, 13, { depth: depths[1] }]],
      registration: 0.2,
      ...more,
    });

  test('(faces-web-too-thin) 6 − 2 − 3.1 is less than 1: reported once, between both openings, with both regions', () => {
    const findings = over([2, 3.1], { minWeb: 1 });
    expect(reported(findings, ...WEBS)).toEqual([
      ['faces-web-too-thin', { web: near(0.9), limit: 1, near: 2, far: 3.1, registration: 0.2 }],
    ]);
    const place = findings.find(({ code }) => code === 'faces-web-too-thin')?.place;
    expect(place?.regions).toEqual(['R2', 'F2']);
    expect(place?.at?.x).toBeGreaterThan(13.1 + 12);
    expect(place?.at?.x).toBeLessThan(58 - 12);
    expect(place?.at?.y).toBeCloseTo((2 + 27.9) / 2, 0);
  });

  test('(faces-web-at-worst) 0.9 is enough, but not less 0.23 of the sheet and 4 % of 5.1', () => {
    const worst = { web: near(0.9 - 0.23 - 0.04 * 5.1), near: near(2.08), far: near(3.224) };
    for (const minWeb of [0.47, 0.9]) {
      expect(reported(over([2, 3.1], { minWeb, rateSpread: 0.04 }), ...WEBS)).toEqual([
        ['faces-web-at-worst', { ...worst, limit: minWeb, registration: 0.2 }],
      ]);
    }
    expect(reported(over([2, 3.1], { minWeb: 0.46, rateSpread: 0.04 }), ...WEBS)).toEqual([]);
  });

  test('(floors-meet) 6.3 mm of 6, and just all of it', () => {
    expect(reported(over([3.1, 3.2], { minWeb: 0.5 }), ...WEBS)).toEqual([
      ['floors-meet', { web: near(-0.3), limit: 0.5, near: 3.1, far: 3.2, registration: 0.2 }],
    ]);
    expect(reported(over([2.9, 3.1], { minWeb: 0.5 }), ...WEBS)).toEqual([
      ['floors-meet', { web: near(0), limit: 0.5, near: 2.9, far: 3.1, registration: 0.2 }],
    ]);
    // Only at worst: 0.1 mm less than nothing is no hole as planned.
    expect(reported(over([2.9, 2.8], { minWeb: 0.2, rateSpread: 0.03 }), ...WEBS)).toEqual([
      [
        'faces-web-at-worst',
        {
          web: near(0.3 - 0.23 - 0.03 * 5.7),
          limit: 0.2,
          near: near(2.987),
          far: near(2.884),
          registration: 0.2,
        },
      ],
    ]);
  });

  test('in a sheet that thins, where it is thinnest over both: at x = 58', () => {
    const thickness = { from: { x: -40, y: 0 }, to: { x: 130, y: 0 }, fromValue: 6.8, toValue: 5.1 };
    const facts = { web: near(6.8 - 0.98 - 5.1), limit: 0.8, near: 2, far: 3.1, registration: 0.2 };
    expect(reported(over([2, 3.1], { minWeb: 0.8, stock: { thickness } }), ...WEBS)).toEqual([
      ['faces-web-too-thin', facts],
    ]);
    expect(
      reported(over([2, 3.1], { minWeb: 0.7, stock: { thickness }, rateSpread: 0.02 }), ...WEBS),
    ).toEqual([
      [
        'faces-web-at-worst',
        {
          ...facts,
          web: near(6.8 - 0.98 - 5.1 - 0.23 - 0.02 * 5.1),
          limit: 0.7,
          near: near(2.04),
          far: near(3.162),
        },
      ],
    ]);
  });

  test('one for the same regions, thinnest first', () => {
    const findings = checkTwoFaces({
      near: [
        [rectangle(0, 0, 50, 40), 20, 20, { depth: 2 }],
        [rectangle(70, 0, 100, 40), 80, 20, { depth: 2.3 }],
      ],
      far: [[rectangle(-10, -5, 110, 31), 40, 13, { depth: 3.1 }]],
      minWeb: 1,
    });
    expect(reported(findings, ...WEBS).map(([, facts]) => facts)).toEqual([
      { web: near(0.6), limit: 1, near: 2.3, far: 3.1, registration: 0 },
      { web: near(0.9), limit: 1, near: 2, far: 3.1, registration: 0 },
    ]);
    const regions = findings
      .filter(({ code }) => code === 'faces-web-too-thin')
      .map(({ place }) => place.regions);
    expect(regions).toEqual([
      ['R3', 'F2'],
      ['R2', 'F2'],
    ]);
  });
});

describe('M9.6: etches beside each other', () => {
  /**
   * Masked again for each stage, the near pocket is cut 1 deep through an opening that ends at 59, then from 1 to 3 through one
   * that ends at 57; the far one 1 deep, from 59 on. With a gap g between: 1 + √((2 + 1)² − g²).
   */
  const beside = (more: Partial<TwoFaces> = {}) =>
    checkTwoFaces({
      near: [[rectangle(0, 0, 60, 40), 30, 20, { depth: 3 }]],
      far: [[rectangle(58, -5, 110, 51), 80, 13, { depth: 1 }]],
      masking: 're-mask',
      stock: { thickness: 4, minus: 0.1 },
      registration: 0.2,
      ...more,
    });

  test('(faces-web-too-thin) openings 2 apart come nearer by the registration of 0.2', () => {
    const findings = beside({ minWeb: 0.65 });
    expect(reported(findings, ...WEBS)).toEqual([
      [
        'faces-web-too-thin',
        { web: near(3 - Math.sqrt(9 - 3.24)), limit: 0.65, near: 3, far: 1, registration: 0.2 },
      ],
    ]);
    // Two thirds of the way from the near opening, in line with where both front each other.
    const place = findings.find(({ code }) => code === 'faces-web-too-thin')?.place;
    expect(place?.at?.x).toBeCloseTo(57 + (2 * 2) / 3, 3);
    expect(reported(beside({ minWeb: 0.65, registration: 0 }), 'faces-web-too-thin')).toHaveLength(0);
  });

  test('(faces-web-at-worst) floor and cuts are 5 % deeper, the sheet 0.1 thinner, and openings stay', () => {
    expect(reported(beside({ minWeb: 0.5 }), ...WEBS)).toEqual([
      [
        'faces-web-at-worst',
        {
          web: near(3.9 - 1.05 - Math.sqrt(3.15 ** 2 - 3.24)),
          limit: 0.5,
          near: near(3.15),
          far: near(1.05),
          registration: 0.2,
        },
      ],
    ]);
    expect(reported(beside({ minWeb: 0.26 }), ...WEBS)).toEqual([]);
  });

  test('the sheet is as thick as it is there: 4.3 − 0.005 x', () => {
    const thickness = { from: { x: 0, y: 0 }, to: { x: 100, y: 0 }, fromValue: 4.3, toValue: 3.8 };
    const [first] = reported(beside({ minWeb: 0.65, stock: { thickness, minus: 0.1 } }), ...WEBS);
    const there = 4.3 - 0.005 * (57 + 4 / 3);
    expect(first).toEqual([
      'faces-web-too-thin',
      expect.objectContaining({ web: expect.closeTo(there - 1 - Math.sqrt(9 - 3.24), 5) }),
    ]);
  });

  test('where land goes on for ever a place between pockets is in no region', () => {
    const deep = checkTwoFaces({
      near: [[rectangle(0, 0, 60, 40), 30, 20, { depth: 3 }]],
      far: [[rectangle(60.2, -5, 110, 51), 80, 13, { depth: 2.6 }]],
      sheet: false,
      registration: 5.3,
      minWeb: 1,
      rateSpread: 0,
    });
    // 5.8 between openings, less 5.3: √(5.6² − 0.5²) of 6 mm.
    const found = deep.find(({ code }) => code === 'faces-web-too-thin');
    expect(found?.facts).toMatchObject({ web: expect.closeTo(6 - Math.sqrt(5.6 ** 2 - 0.25), 6) });
    expect(found?.place.regions).toEqual([]);
  });
});

test('the far face has the checks of its own', () => {
  const findings = checkTwoFaces({
    near: [[rectangle(0, 0, 20, 13), 9, 6, { depth: 5.6 }]],
    far: [[rectangle(50, 0, 80, 23), 60, 6, { depth: 5.7 }]],
    minWeb: 0.5,
  });
  const thin = findings.filter(({ code }) => code === 'web-too-thin');
  expect(thin.map(({ place }) => place.regions)).toEqual([['F2']]);
  expect(thin[0]?.facts).toMatchObject({ level: 5.7 });
});

test('a plan of one face has none', () => {
  expect(checkTwoFaces({ near: [[rectangle(0, 0, 20, 13), 9, 6, { depth: 5.9 }]], minWeb: 1 })).toEqual([]);
});

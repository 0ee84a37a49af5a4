/** M9.4 and M9.9: what is cut out, its tabs, and thicknesses that count on the other face. Undercut 1. */
import { describe, expect, test } from 'vitest';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Asked } from '#part/part.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { checkTwoFaces, type Pocket, reported, type TwoFaces } from '#support/parts/check-two-faces.ts';

const WEBS = ['faces-web-too-thin', 'faces-web-at-worst', 'floors-meet'];
const near = (value: number) => expect.closeTo(value, 9);

describe('M9.4: cut out', () => {
  const CUTS = ['through-too-shallow', 'through-at-worst'];
  /** Through 1 mm, + 0.04: from both faces, or from the near one. */
  const cut = (depths: readonly [number, number?], wall: number, more: Partial<TwoFaces> = {}) =>
    checkTwoFaces({
      near: [[rectangle(0, 0, 20, 13), 9, 6, { depth: depths[0], wall }]],
      far:
        depths[1] === undefined
          ? [[rectangle(50, 0, 70, 13), 60, 6, { depth: 0.3 }]]
          : [[rectangle(0, 0, 20, 13), 9, 6, { depth: depths[1], wall }]],
      stock: { thickness: 1, plus: 0.04, minus: 0.02 },
      ...more,
    });

  test('(through-too-shallow) each face takes half of the thickest sheet, or one takes all of it', () => {
    const findings = cut([0.51, 0.52], 0.5);
    expect(reported(findings, ...CUTS)).toEqual([
      ['through-too-shallow', { level: 0.51, needed: 0.52, faces: 2 }],
      ['through-too-shallow', { level: 0.52, needed: 0.52, faces: 2 }],
    ]);
    const places = findings.filter(({ code }) => code === 'through-too-shallow').map(({ place }) => place);
    expect(places.map(({ regions }) => regions)).toEqual([['R2'], ['F2']]);
    for (const { at } of places) expect(at && isInsideLoops([rectangle(0, 0, 20, 13)], at)).toBe(true);
    expect(reported(cut([0.9], 1), ...CUTS)).toEqual([
      ['through-too-shallow', { level: 0.9, needed: 1.04, faces: 1 }],
    ]);
    expect(reported(cut([1.2], 1), ...CUTS)).toEqual([]);
  });

  test('(through-at-worst) comes through as planned, but not in a bath slower by its spread', () => {
    expect(reported(cut([0.54, 0.56], 0.5), ...CUTS)).toEqual([
      ['through-at-worst', { level: 0.54, worst: near(0.513), needed: 0.52, faces: 2 }],
    ]);
    // Just so deep at worst is not through: 0.8 times 0.65.
    expect(reported(cut([0.65, 0.66], 0.5, { rateSpread: 0.2 }), ...CUTS)).toEqual([
      ['through-at-worst', { level: 0.65, worst: 0.52, needed: 0.52, faces: 2 }],
    ]);
  });

  test('floors meet where they are to, and a pocket is not cut out', () => {
    expect(reported(cut([0.7, 0.7], 0.5, { minWeb: 0.4 }), ...WEBS)).toEqual([]);
    expect(reported(cut([1.2], 1), ...WEBS, ...CUTS)).toEqual([]);
  });

  test('(part-falls-apart) a frame cut out round a piece of 8 by 5', () => {
    const frame = (wall: number | undefined, depth: number): readonly Pocket[] => [
      [rectangle(0, 0, 20, 13), 1, 1, { depth, ...(wall !== undefined && { wall }) }],
      [rectangle(7, 4, 15, 9), 10, 6, { depth: 0 }],
    ];
    const loose = checkTwoFaces({ near: frame(0.5, 0.7), far: frame(0.5, 0.7), stock: { thickness: 1 } });
    const [found] = reported(loose, 'part-falls-apart');
    expect(found?.[1]).toMatchObject({
      pieces: 1,
      area: expect.closeTo(40, 1),
      rest: expect.closeTo(21_840, 0),
    });
    const floor = checkTwoFaces({
      near: frame(undefined, 0.4),
      far: frame(undefined, 0.3),
      stock: { thickness: 1 },
    });
    expect(reported(floor, 'part-falls-apart')).toEqual([]);
  });
});

describe('M9.9: tabs', () => {
  /** A cut of 1.25 with its wall at 0.75, half of 1.5: 1.25 of undercut stands √(1.25² − 0.75²) = 1 back, a cusp of 0.25. */
  const tabbed = (width: number | undefined, depth = 1.25, wall = 0.75) => {
    const tabs = width === undefined ? {} : { tabs: { width, at: [{ x: 10, y: 0 }] } };
    const slot: Pocket = [rectangle(0, 0, 20, 13), 9, 6, { depth, wall, ...tabs }];
    return checkTwoFaces({ near: [slot], far: [slot], stock: { thickness: 1.5, plus: 0.04 } });
  };

  test('(tab-too-thin) a cusp on either side leaves less of a tab than the sheet is thick', () => {
    const facts = { width: 1.9, left: near(1.4), limit: 1.5, needed: near(2) };
    const findings = tabbed(1.9);
    expect(reported(findings, 'tab-too-thin')).toEqual([
      ['tab-too-thin', facts],
      ['tab-too-thin', facts],
    ]);
    expect(findings.find(({ code }) => code === 'tab-too-thin')?.place.regions).toEqual(['R2']);
    expect(reported(tabbed(2), 'tab-too-thin')).toEqual([]);
    expect(reported(tabbed(undefined), 'tab-too-thin')).toEqual([]);
  });

  test('what does not come through has no cusps', () => {
    expect(reported(tabbed(1.9, 0.77), 'tab-too-thin', 'through-too-shallow')).toHaveLength(2);
    expect(reported(tabbed(1.9, 0.77), 'tab-too-thin')).toEqual([]);
  });

  test('a tab may be too thin and its cut not sure', () => {
    const found = reported(tabbed(1.5, 0.8), 'tab-too-thin', 'through-at-worst').map(([code]) => code);
    expect(found).toEqual(['tab-too-thin', 'through-at-worst', 'tab-too-thin', 'through-at-worst']);
  });
});

describe('(thickness-of-one-face)', () => {
  const ONE = 'thickness-of-one-face';
  /** 6 mm less 1.7 and less 0.8 from behind, where the far face takes `taken`. */
  const counted = (own: Partial<Asked>, taken: Partial<Asked> & { depth: number }, more = {}) =>
    checkTwoFaces({
      near: [[rectangle(0, 0, 60, 40), 30, 20, { depth: 1.7, asThickness: true, behind: 0.8, ...own }]],
      far: [[rectangle(10, -5, 70, 31), 40, 13, taken]],
      ...more,
    });

  test('the other face takes 1.1 where 0.8 was counted on', () => {
    const findings = counted({}, { depth: 1.1 });
    expect(reported(findings, ONE)).toEqual([[ONE, { thickness: near(3.5), far: 1.1 }]]);
    const place = findings.find(({ code }) => code === ONE)?.place;
    expect(place?.regions).toEqual(['R2', 'F2']);
    expect(place?.at && isInsideLoops([rectangle(0, 0, 60, 40)], place.at)).toBe(true);
    expect(reported(counted({}, { depth: 0.5 }), ONE)).toEqual([[ONE, { thickness: near(3.5), far: 0.5 }]]);
  });

  test('off by no more than both tolerances is no trouble: plus of both, or minus of both', () => {
    const wide = { plus: 0.11, minus: 0.03 };
    expect(reported(counted(wide, { depth: 1.05, plus: 0.14, minus: 0.02 }), ONE)).toEqual([]);
    expect(reported(counted(wide, { depth: 1.06, plus: 0.14, minus: 0.02 }), ONE)).toHaveLength(1);
    const low = { plus: 0.02, minus: 0.12 };
    expect(reported(counted(low, { depth: 0.58, plus: 0.03, minus: 0.1 }), ONE)).toEqual([]);
    expect(reported(counted(low, { depth: 0.57, plus: 0.03, minus: 0.1 }), ONE)).toHaveLength(1);
  });

  test('on the far face likewise, where the sheet is 6.2 − 0.01 x', () => {
    const thickness = { from: { x: 0, y: 0 }, to: { x: 100, y: 0 }, fromValue: 6.2, toValue: 5.2 };
    const findings = checkTwoFaces({
      near: [[rectangle(0, 0, 60, 40), 30, 20, { depth: 1.3 }]],
      far: [[rectangle(10, -5, 70, 31), 40, 13, { depth: 1.7, asThickness: true, behind: 0.9 }]],
      stock: { thickness },
    });
    const found = findings.find(({ code }) => code === ONE);
    expect(found?.place.regions).toEqual(['F2', 'R2']);
    const label = found?.place.at?.x ?? Number.NaN;
    expect(found?.facts).toEqual({ thickness: near(6.2 - 0.01 * label - 1.7 - 0.9), far: 1.3 });
  });

  test('not where a depth is asked, nothing is taken behind, or that changes', () => {
    expect(reported(counted({ asThickness: false }, { depth: 1.1 }), ONE)).toEqual([]);
    expect(
      reported(
        checkTwoFaces({
          near: [[rectangle(0, 0, 60, 40), 30, 20, { depth: 1.7, asThickness: true }]],
          far: [[rectangle(10, -5, 70, 31), 40, 13, { depth: 1.1 }]],
        }),
        ONE,
      ),
    ).toEqual([]);
    const steps = (more: object) => (plan: EtchPlan) => ({
      ...plan,
      ...(plan.far && {
        far: {
          ...plan.far,
          regions: plan.far.regions.map(({ asked, ...region }) => ({
            ...region,
            ...('taper' in more ? more : {}),
            asked: 'taper' in more ? asked : { ...asked, ...more },
          })),
        },
      }),
    });
    const sloped = { from: { x: 0, y: 0 }, to: { x: 1, y: 0 }, fromValue: 1, toValue: 2 };
    const taper = { tapers: [sloped], low: 1, high: 2, plus: 0.1, minus: 0.1 };
    for (const more of [{ wall: 3 }, { tapers: [sloped] }, { taper }]) {
      expect(reported(counted({}, { depth: 1.1 }, { change: steps(more) }), ONE)).toEqual([]);
    }
    expect(reported(counted({}, { depth: 1.1 }, { change: steps({ plus: 0.05 }) }), ONE)).toHaveLength(1);
  });

  test('land behind takes nothing, and regions that touch do not lie behind each other', () => {
    const own: Pocket = [rectangle(0, 0, 60, 40), 30, 20, { depth: 1.7, asThickness: true, behind: 0.8 }];
    const beside = (x0: number, y0: number) =>
      reported(
        checkTwoFaces({ near: [own], far: [[rectangle(x0, y0, 100, 80), 90, 60, { depth: 1.1 }]] }),
        ONE,
      );
    expect(beside(60, 0)).toEqual([]);
    // They share a corner of 0.08 by 0.09 mm, or of 0.12 by 0.11.
    expect(beside(59.92, 39.91)).toEqual([]);
    expect(beside(59.88, 39.89)).toHaveLength(1);
  });
});

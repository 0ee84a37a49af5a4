/** Strips of maskant between openings: which coat they stand in, and what cuts under them. φ = 1. */
import { describe, expect, test } from 'vitest';
import { rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { type CheckedPart, checkPart } from '#support/parts/check-part.ts';

const SHEET = rectangle(-60, -60, 200, 120);

const found = (drawn: CheckedPart, wanted: string) => checkPart(drawn).filter(({ code }) => code === wanted);

describe('a floor of 1 with two of 2 in it, 1.5 apart, where maskant must be 6 wide', () => {
  const drawn: CheckedPart = {
    sheet: SHEET,
    outlines: [
      rectangle(0, 0, 100, 60),
      roundedRectangle(15, 17, 46, 43, 6),
      roundedRectangle(47.5, 20, 85, 40, 6),
    ],
    depths: [
      [5, 30, 1],
      [30, 30, 2],
      [70, 30, 2],
    ],
    rules: { minLandWidth: 6 },
  };

  test('peeled in turn, the strip between them is peeled before the run ends', () => {
    expect(found(drawn, 'maskant-too-narrow')).toEqual([]);
  });

  test('(maskant-too-narrow) with a new coat for each stage it stands to the end of the second: 1.5 and the undercut of 1 on each side', () => {
    const [reported, more] = found({ ...drawn, masking: 're-mask' }, 'maskant-too-narrow');
    expect(more).toBeUndefined();
    expect(reported?.facts).toMatchObject({
      width: expect.closeTo(3.5, 6),
      footing: expect.closeTo(1.5, 6),
      limit: 6,
    });
    expect(reported?.place.at?.x).toBeCloseTo(46.75, 6);
    const [across] = reported?.place.outline ?? [];
    expect([across?.spans[0]?.start.x, across?.spans[0]?.end.x].sort((a, b) => (a ?? 0) - (b ?? 0))).toEqual([
      expect.closeTo(45, 6),
      expect.closeTo(48.5, 6),
    ]);
  });
});

describe.each([true, false])('lines at the foot of walls, the deeper pocket first %s', (isFirst) => {
  const [left, right] = isFirst ? [2, 0.5] : [0.5, 2];
  const apart = (land: number, isLying: boolean): CheckedPart => ({
    sheet: SHEET,
    outlines: isLying
      ? [roundedRectangle(0, -40, 70, 20, 8), roundedRectangle(4, 20 + land, 63, 80, 8)]
      : [roundedRectangle(0, 0, 60, 60, 8), roundedRectangle(60 + land, 5, 120, 52, 8)],
    depths: isLying
      ? [
          [30, 0, left],
          [30, 60, right],
        ]
      : [
          [30, 30, left],
          [90, 30, right],
        ],
    edgeDatum: 'deep-foot',
  });

  test.each([false, true])(
    '(maskant-comes-off) each side is cut under by its own pocket: 2 and 0.5; lying %s',
    (isLying) => {
      const [reported] = found(apart(1.8, isLying), 'maskant-comes-off');
      expect(reported?.facts).toMatchObject({
        width: expect.closeTo(1.8, 6),
        undercut: expect.closeTo(2.5, 6),
        // At the shallow pocket's own line the deep one's wall is highest.
        ridge: expect.closeTo(Math.sqrt(2 ** 2 - 1.8 ** 2), 6),
        least: 3,
      });
      expect(isLying ? reported?.place.at?.y : reported?.place.at?.x).toBeCloseTo(isLying ? 20.9 : 60.9, 6);
      expect(reported?.place.outline?.length).toBeGreaterThan(0);
    },
  );

  test('2.7 of it is not cut through, but is too narrow', () => {
    expect(found(apart(2.7, false), 'maskant-comes-off')).toEqual([]);
    expect(found(apart(2.7, false), 'maskant-too-narrow')[0]?.facts).toMatchObject({
      width: expect.closeTo(2.7, 6),
      footing: expect.closeTo(0.2, 6),
    });
  });
});

describe('a strip along the sheet’s edge, the lines at the foot of the walls of a pocket of 2', () => {
  const beside = (width: number): CheckedPart => ({
    sheet: rectangle(0, 0, 90, 70),
    outlines: [roundedRectangle(width, 12, 70, 60, 8)],
    depths: [[40, 30, 2]],
    edgeDatum: 'deep-foot',
  });

  test('(maskant-comes-off) is cut under from one side: 2 of 1.6', () => {
    const [reported, more] = found(beside(1.6), 'maskant-comes-off');
    expect(more).toBeUndefined();
    expect(reported?.facts).toMatchObject({
      width: expect.closeTo(1.6, 6),
      undercut: expect.closeTo(2, 6),
      ridge: expect.closeTo(1.2, 6),
    });
  });

  test('(maskant-too-narrow) 2.6 of it stands on 0.6, 3.1 is wide enough', () => {
    expect(found(beside(2.6), 'maskant-too-narrow')).toMatchObject([
      { facts: { width: expect.closeTo(2.6, 6), footing: expect.closeTo(0.6, 6), limit: 3 } },
    ]);
    expect(found(beside(2.6), 'maskant-comes-off')).toEqual([]);
    expect(found(beside(3.1), 'maskant-too-narrow')).toEqual([]);
  });
});

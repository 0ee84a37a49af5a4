/** Land too narrow at the surface, with figures by hand. φ = 1, least land 3 mm, and twice the depth beside it. */
import { expect, test } from 'vitest';
import { type CheckedPart, checkPart } from '#support/check-part.ts';
import { rectangle, roundedRectangle } from '#support/shapes.ts';

const SHEET = rectangle(-60, -60, 200, 120);

function narrowLand(drawn: CheckedPart) {
  return checkPart(drawn).filter(({ code }) => code === 'land-too-narrow');
}

/** Two pockets with a strip of land between them. */
function pair(land: number, left: number, right: number, special: Partial<CheckedPart> = {}): CheckedPart {
  return {
    sheet: SHEET,
    outlines: [roundedRectangle(0, 0, 60, 60, 8), roundedRectangle(60 + land, 0, 120 + land, 50, 8)],
    depths: [
      [30, 30, left],
      [90 + land, 30, right],
    ],
    ...special,
  };
}

test.each([
  [2, 1.2],
  [1.2, 2],
])(
  'between pockets of %f and %f mm the deeper one counts, and the maskant stands over both: 3.5 + 2 + 1.2',
  (left, right) => {
    const found = narrowLand(pair(3.5, left, right));
    expect(found.map(({ facts }) => facts)).toMatchObject([
      {
        width: expect.closeTo(3.5, 9),
        limit: 4,
        depth: 2,
        maskant: expect.closeTo(6.7, 9),
      },
    ]);
    const [told] = found;
    expect(told?.place.at?.x).toBeCloseTo(61.75, 9);
    expect(told?.place.regions).toHaveLength(2);
    const [way] = told?.place.outline ?? [];
    expect([way?.spans[0]?.start.x, way?.spans[0]?.end.x].sort((a, b) => (a ?? 0) - (b ?? 0))).toEqual([
      expect.closeTo(60, 9),
      expect.closeTo(63.5, 9),
    ]);
    expect(narrowLand(pair(4.1, left, right))).toEqual([]);
  },
);

test('beside shallow pockets the least land counts', () => {
  expect(narrowLand(pair(2.7, 0.6, 1.1))[0]?.facts).toMatchObject({ limit: 3, depth: 1.1 });
  expect(narrowLand(pair(3.1, 0.6, 1.1))).toEqual([]);
});

test('with a coat a stage the floor beside the land tells how deep it is cut, though the first stage’s wall comes up there', () => {
  const deep = { masking: 're-mask' } as const;
  const [told] = narrowLand(pair(3.5, 2, 1.2, deep));
  expect(told?.facts).toMatchObject({ limit: 4, depth: 2 });
  // A floor of 1.2 on both sides, whatever else the run etches.
  const elsewhere = pair(2.7, 1.2, 1.2, deep);
  const [shallow] = narrowLand({
    ...elsewhere,
    outlines: [...elsewhere.outlines, rectangle(0, 80, 60, 110)],
    depths: [...elsewhere.depths, [30, 95, 2.6]],
  });
  expect(shallow?.facts).toMatchObject({ limit: 3, depth: 1.2 });
});

test('between a pocket and the sheet’s edge only the pocket cuts under the maskant', () => {
  const pocket = roundedRectangle(-56.4, 0, 60, 60, 8);
  const [told] = narrowLand({ sheet: SHEET, outlines: [pocket], depths: [[30, 30, 2]] });
  expect(told?.facts).toMatchObject({
    width: expect.closeTo(3.6, 9),
    limit: 4,
    depth: 2,
    maskant: expect.closeTo(5.6, 9),
  });
});

test('a tab of the sheet itself is nobody’s land, however narrow', () => {
  const tabbed = [
    [-60, -60],
    [200, -60],
    [200, 120],
    [21, 120],
    [21, 150],
    [19, 150],
    [19, 120],
    [-60, 120],
  ] as const;
  const sheet = tabbed.map(([x, y], i) => {
    const [nextX, nextY] = tabbed[(i + 1) % tabbed.length] ?? [x, y];
    return { kind: 'line' as const, start: { x, y }, end: { x: nextX, y: nextY } };
  });
  expect(narrowLand({ sheet, outlines: [roundedRectangle(0, 0, 60, 60, 8)], depths: [[30, 30, 2]] })).toEqual(
    [],
  );
});

test('an island of maskant that is too small is told as that alone, a longer one as narrow land', () => {
  const island = (length: number, depth: number) =>
    checkPart({
      sheet: SHEET,
      outlines: [roundedRectangle(0, 0, 60, 60, 8), rectangle(20, 20, 20 + length, 22)],
      depths: [[5, 30, depth]],
    })
      .map(({ code }) => code)
      .filter((code) => /land/.test(code));
  expect(island(2.1, 0.4)).toEqual(['maskant-island-too-small']);
  expect(island(30, 1.1)).toContain('land-too-narrow');
});

test('a strip whose maskant is too narrow is told for its maskant alone', () => {
  const codes = checkPart(pair(1.9, 0.4, 0.5)).map(({ code }) => code);
  expect(codes).toContain('maskant-too-narrow');
  expect(codes).not.toContain('land-too-narrow');
});

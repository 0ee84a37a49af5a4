/** Land too narrow at the surface, with figures by hand. φ = 1, least land 3 mm, and twice the depth beside it. */
import { describe, expect, test } from 'vitest';
import { rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { type CheckedPart, checkPart } from '#support/parts/check-part.ts';

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
    const [reported] = found;
    expect(reported?.place.at?.x).toBeCloseTo(61.75, 9);
    expect(reported?.place.regions).toHaveLength(2);
    const [way] = reported?.place.outline ?? [];
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

test('with a new coat for each stage the floor beside the land shows how deep it is cut, though the first stage’s wall comes up there', () => {
  const deep = { masking: 're-mask' } as const;
  const [reported] = narrowLand(pair(3.5, 2, 1.2, deep));
  expect(reported?.facts).toMatchObject({ limit: 4, depth: 2 });
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
  const [reported] = narrowLand({ sheet: SHEET, outlines: [pocket], depths: [[30, 30, 2]] });
  expect(reported?.facts).toMatchObject({
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

test('an island of maskant that is too small is reported as that alone, a longer one as narrow land', () => {
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

test('a strip whose maskant is too narrow is reported for its maskant alone', () => {
  const codes = checkPart(pair(1.9, 0.4, 0.5)).map(({ code }) => code);
  expect(codes).toContain('maskant-too-narrow');
  expect(codes).not.toContain('land-too-narrow');
});

test('an island too small is reported as that alone, however far its maskant stands out', () => {
  const codes = checkPart({
    sheet: SHEET,
    outlines: [roundedRectangle(0, 0, 60, 60, 8), rectangle(20, 20, 22.1, 22.3)],
    depths: [[5, 30, 1.2]],
  }).map(({ code }) => code);
  expect(codes).toContain('maskant-island-too-small');
  expect(codes).not.toContain('land-too-narrow');
});

test('what lies across a shallow pocket is no strip of land', () => {
  // Land of 0.4, a pocket 1 wide and 0.2 deep, land of 0.5: both strips are reported for their maskant.
  const codes = checkPart({
    sheet: SHEET,
    outlines: [
      roundedRectangle(0, 0, 60, 60, 8),
      rectangle(60.4, -9, 61.4, 69),
      roundedRectangle(61.9, 0, 120, 50, 8),
    ],
    depths: [
      [30, 30, 2],
      [61, 30, 0.2],
      [90, 30, 1.3],
    ],
  }).map(({ code }) => code);
  expect(codes).toContain('maskant-too-narrow');
  expect(codes).not.toContain('land-too-narrow');
});

test('a strip is held to the cuts beside it, and not to the deepest of the part', () => {
  const beside = pair(3.1, 0.6, 1.1);
  const deepElsewhere: CheckedPart = {
    ...beside,
    outlines: [...beside.outlines, rectangle(0, 80, 60, 110)],
    depths: [...beside.depths, [30, 95, 2.6]],
  };
  expect(narrowLand(deepElsewhere)).toEqual([]);
});

describe('with a new coat for each stage', () => {
  test('a strip beside the sheet’s lower edge is held to its pocket', () => {
    const [reported] = narrowLand({
      sheet: SHEET,
      outlines: [roundedRectangle(0, -56.4, 60, 60, 8)],
      depths: [[30, 30, 2]],
      masking: 're-mask',
    });
    expect(reported?.facts).toMatchObject({ width: expect.closeTo(3.6, 9), limit: 4, depth: 2 });
  });

  /** Three floors in a row along a strip, and a pocket of 1.2 across it beside the middle one; upright or lying. */
  const alongStrip = (floors: readonly [number, number, number], isUpright: boolean): CheckedPart => {
    const box = (along: readonly [number, number], across: readonly [number, number]) =>
      isUpright
        ? rectangle(across[0], along[0], across[1], along[1])
        : rectangle(along[0], across[0], along[1], across[1]);
    const at = (along: number, across: number, depth: number) =>
      isUpright ? ([across, along, depth] as const) : ([along, across, depth] as const);
    const [low, middle, high] = floors;
    return {
      sheet: SHEET,
      outlines: [
        box([0, 20], [0, 40]),
        box([20, 50], [0, 40]),
        box([50, 65], [0, 40]),
        box([28, 43], [43.5, 73.5]),
      ],
      depths: [at(10, 20, low), at(35, 20, middle), at(60, 20, high), at(35, 60, 1.2)],
      masking: 're-mask',
    };
  };

  test.each([
    ['upright', true],
    ['lying', false],
  ])('beside an %s strip the floor opposite counts, and not those farther along', (_, isUpright) => {
    expect(narrowLand(alongStrip([2, 1.2, 2], isUpright))).toEqual([]);
    const [reported, more] = narrowLand(alongStrip([1.2, 2, 1.2], isUpright));
    expect(more).toBeUndefined();
    expect(reported?.facts).toMatchObject({ width: expect.closeTo(3.5, 9), limit: 4, depth: 2 });
  });

  test('the floor right beside the strip counts, and not a deeper one 3.4 mm behind it', () => {
    const banded: CheckedPart = {
      sheet: SHEET,
      outlines: [rectangle(0, 0, 60, 60), rectangle(10, 10, 56.6, 50), rectangle(63.5, 5, 103.5, 52)],
      depths: [
        [5, 30, 1.2],
        [30, 30, 2],
        [80, 30, 1.2],
      ],
      masking: 're-mask',
    };
    expect(narrowLand(banded)).toEqual([]);
  });
});

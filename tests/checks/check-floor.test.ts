/** Floors that are not reached, with their figures: depths by the front's own formula √(level² − gap²), φ = 1. */
import { describe, expect, test } from 'vitest';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { polygon, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { type CheckedPart, checkPart } from '#support/parts/check-part.ts';
import { partOf } from '#support/parts/part-of.ts';

const SHEET = rectangle(-60, -60, 300, 200);

function found(code: string, drawn: Omit<CheckedPart, 'sheet'> & { readonly sheet?: CheckedPart['sheet'] }) {
  return checkPart({ sheet: SHEET, ...drawn }).filter((each) => each.code === code);
}

/** Two rooms of 40 by 40 that a neck of the given width joins; its upper side may be drawn in two lines. */
const dumbbell = (x: number, neck: number, { long = 6, cutAt = [] as readonly number[] } = {}) =>
  polygon([
    [x, 0],
    [x + 40, 0],
    [x + 40, 20],
    [x + 40 + long, 20],
    [x + 40 + long, 0],
    [x + 80 + long, 0],
    [x + 80 + long, 40],
    [x + 40 + long, 40],
    [x + 40 + long, 20 + neck],
    ...cutAt.map((each) => [x + each, 20 + neck] as const),
    [x + 40, 20 + neck],
    [x + 40, 40],
    [x, 40],
  ]);

describe('(floor-not-reached)', () => {
  test('a neck of 3.9 between two rooms of 2 mm: its ridge, the least depth asked, and how much floor there is', () => {
    const [reported, more] = found('floor-not-reached', {
      outlines: [dumbbell(0, 3.9)],
      depths: [[20, 20, 2]],
    });
    expect(more).toBeUndefined();
    const facts = reported?.code === 'floor-not-reached' ? reported.facts : undefined;
    expect(facts).toMatchObject({
      width: expect.closeTo(3.9, 9),
      needed: 4,
      least: 1.94,
      places: 1,
    });
    // Half-way through the neck the openings of both rooms are 5 mm away along it.
    expect(facts?.depth).toBeLessThan(1.94 - 0.005);
    // Most of the two rooms is floor: 2 · 36² and some, of 2 · 40² + 6 · 3.9.
    expect(facts?.floorArea).toBeGreaterThan(2 * 36 ** 2 - 10);
    expect(facts?.floorArea).toBeLessThan(2 * 40 ** 2);
    expect(facts?.share).toBeCloseTo((facts?.floorArea ?? 0) / (2 * 40 ** 2 + 6 * 3.9), 9);
    expect(reported?.place.at).toEqual({ x: expect.closeTo(43, 9), y: expect.closeTo(21.95, 9) });
    expect(reported?.place.regions).toHaveLength(1);
    const [way] = reported?.place.outline ?? [];
    expect([way?.spans[0]?.start.y, way?.spans[0]?.end.y].sort((a, b) => (a ?? 0) - (b ?? 0))).toEqual([
      expect.closeTo(20, 9),
      expect.closeTo(23.9, 9),
    ]);
  });

  test('a neck with room for both allowances is reached, two necks in two regions are two findings by their widths', () => {
    expect(found('floor-not-reached', { outlines: [dumbbell(0, 4.1)], depths: [[20, 20, 2]] })).toEqual([]);
    const both = found('floor-not-reached', {
      outlines: [dumbbell(0, 3.9), dumbbell(120, 3.2)],
      depths: [
        [20, 20, 2],
        [140, 20, 2],
      ],
    });
    const reported = both.map(({ facts }) => ('width' in facts ? Number(facts.width.toFixed(9)) : 0));
    expect([...new Set(reported)]).toEqual([3.2, 3.9]);
  });

  test('a neck just as wide as both allowances has no opening either, and is reported', () => {
    const [reported] = found('floor-not-reached', { outlines: [dumbbell(0, 4)], depths: [[20, 20, 2]] });
    expect(reported?.facts).toMatchObject({ width: expect.closeTo(4, 9), needed: expect.closeTo(4, 2) });
  });

  test('necks of one width and two lengths are two findings: the etch from the rooms reaches the middle of the short one', () => {
    const reported = found('floor-not-reached', {
      outlines: [dumbbell(0, 3.9), dumbbell(120, 3.9, { long: 2.5 })],
      depths: [
        [20, 20, 2],
        [140, 20, 2],
      ],
    });
    // The rooms' openings end where the ridge is 2 mm from the corners of the mouth: 0.44 before it.
    const away = 2.5 / 2 + Math.sqrt(2 ** 2 - 1.95 ** 2);
    const depths = reported.map(({ facts }) => ('depth' in facts ? facts.depth : Number.NaN));
    expect(depths.sort((a, b) => a - b)).toEqual([0, expect.closeTo(Math.sqrt(2 ** 2 - away ** 2), 6)]);
    expect(reported.map(({ place }) => place.regions?.length)).toEqual([1, 1]);
  });

  test('a neck is one place in its middle, however the drawing cuts its side', () => {
    const [reported, more] = found('floor-not-reached', {
      outlines: [dumbbell(0, 3.9, { cutAt: [42.2] })],
      depths: [[20, 20, 2]],
    });
    expect(more).toBeUndefined();
    expect(reported?.facts).toMatchObject({ width: expect.closeTo(3.9, 9), places: 1 });
    expect(reported?.place.at).toEqual({ x: expect.closeTo(43, 9), y: expect.closeTo(21.95, 9) });
  });

  test.each([
    ['right', 51, 60, 45.5],
    ['left', 40, 53, 56.5],
  ])(
    'beside land and, on the %s, a floor of 1.2, only the part beside land is too narrow',
    (_, from, to, at) => {
      const neck = 3.9;
      const [reported, more] = found('floor-not-reached', {
        outlines: [
          dumbbell(0, neck, { long: 20, cutAt: [from === 40 ? to : from] }),
          rectangle(from, 20 + neck, to, 40),
        ],
        depths: [
          [20, 20, 2],
          [(from + to) / 2, 35, 1.2],
        ],
      });
      expect(more).toBeUndefined();
      expect(reported?.facts).toMatchObject({ width: expect.closeTo(3.9, 9), needed: expect.closeTo(4, 2) });
      expect(reported?.place.at).toEqual({ x: expect.closeTo(at, 6), y: expect.closeTo(21.95, 6) });
    },
  );

  test('a contour that is cut out, 3 mm of sheet etched 3.2 deep, needs √(3.2² − 3²) on each side', () => {
    const cut = (neck: number) =>
      found('floor-not-reached', { outlines: [dumbbell(0, neck)], depths: [[20, 20, 3.2]], wall: 3 });
    const needed = 2 * Math.sqrt(3.2 ** 2 - 3 ** 2);
    expect(cut(needed - 0.03)[0]?.facts).toMatchObject({
      width: expect.closeTo(needed - 0.03, 9),
      needed: expect.closeTo(needed, 2),
    });
    expect(cut(needed + 0.02)).toEqual([]);
  });

  test('beside a shallower floor a neck needs less: √(2² − 1.2²) on that side and 2 on land', () => {
    // The neck's upper side borders on a floor of 1.2 that fills the notch between the rooms.
    const notch = (neck: number) => rectangle(40, 20 + neck, 46, 40);
    const necks = (neck: number) =>
      found('floor-not-reached', {
        outlines: [dumbbell(0, neck), notch(neck)],
        depths: [
          [20, 20, 2],
          [43, 35, 1.2],
        ],
      });
    expect(necks(3.7)).toEqual([]);
    const [reported] = necks(3.5);
    expect(reported?.facts).toMatchObject({ width: expect.closeTo(3.5, 9), needed: expect.closeTo(3.6, 9) });
  });
});

describe('(floor-mostly-wall)', () => {
  const square = (x: number, side: number) => roundedRectangle(x, 0, x + side, side, 3.5);

  test('one finding a stage: the region with the least floor speaks, with all that are mostly wall', () => {
    const drawn: CheckedPart = {
      sheet: SHEET,
      outlines: [square(0, 15.4), square(40, 14), square(80, 40), square(140, 15)],
      depths: [
        [8, 8, 3],
        [47, 7, 3],
        [100, 20, 3],
        [147, 7, 2.95],
      ],
    };
    const { regions } = partOf(drawn);
    const regionAt = (x: number, y: number) =>
      regions.find(({ loops }) => isInsideLoops(loops, { x, y }))?.id;
    const reported = found('floor-mostly-wall', drawn);
    const [deep, less] = reported;
    expect(reported.map(({ facts }) => ('stage' in facts ? facts.stage : 0))).toEqual(
      [1, 2].slice(0, reported.length),
    );
    expect(deep?.facts).toMatchObject({
      regions: 2,
      limit: 0.5,
      area: expect.closeTo(14 ** 2 - (4 - Math.PI) * 3.5 ** 2, 6),
    });
    expect(deep?.place.at?.x).toBeGreaterThan(39);
    expect(deep?.place.at?.x).toBeLessThan(55);
    expect(deep?.place.regions).toEqual([regionAt(8, 8), regionAt(47, 7)].sort());
    expect(less?.place.regions).toEqual([regionAt(147, 7)]);
    const { share, floorArea, area } =
      deep?.code === 'floor-mostly-wall' ? deep.facts : { share: 0, floorArea: 0, area: 1 };
    expect(share).toBeCloseTo(floorArea / area, 9);
    expect(share).toBeLessThan(0.5);
  });

  test.each([
    [60, 100],
    [100, 60],
  ])(
    'of two slots across the sheet with one share of floor, %f and %f mm long, the longer speaks',
    (left, right) => {
      const sheet = polygon([
        [-20, 0],
        [70, 0],
        [70, right],
        [25, right],
        [25, left],
        [-20, left],
      ]);
      const [reported] = found('floor-mostly-wall', {
        sheet,
        outlines: [rectangle(0, 0, 5, left), rectangle(40, 0, 45, right)],
        depths: [
          [2, 30, 2],
          [42, 30, 2],
        ],
      });
      // Of 5 mm, the opening's 1 and √(2² − 1.94²) on each side are within tolerance.
      expect(reported?.facts).toMatchObject({
        area: expect.closeTo(500, 6),
        share: expect.closeTo((1 + 2 * Math.sqrt(2 ** 2 - 1.94 ** 2)) / 5, 6),
        regions: 2,
      });
    },
  );

  test('a region that is not opened at all is reported as that alone', () => {
    const codes = checkPart({
      sheet: SHEET,
      outlines: [rectangle(0, 0, 60, 3)],
      depths: [[30, 1, 2]],
    }).map(({ code }) => code);
    expect(codes).toEqual(['opening-missing']);
  });
});

describe('(floor-lost)', () => {
  /** A strip between two floors of 3 mm, the drawn lines at the foot of their walls. */
  const strip = (width: number, depth: number, tolerance?: number): CheckedPart => ({
    sheet: rectangle(-40, 0, width + 40, 60),
    outlines: [rectangle(-40, 0, 0, 60), rectangle(0, 0, width, 60), rectangle(width, 0, width + 40, 60)],
    depths: [
      [-20, 30, 3],
      [2, 30, depth],
      [width + 20, 30, 3],
    ],
    ...(tolerance !== undefined && { tolerance }),
    edgeDatum: 'deep-foot',
  });

  test('names the strip that two deeper neighbours take, where it is, and how deep they leave it', () => {
    const [reported, more] = found('floor-lost', strip(5.5, 1));
    expect(more).toBeUndefined();
    expect(reported?.facts).toEqual({
      shallowest: expect.closeTo(Math.sqrt(3 ** 2 - 2.75 ** 2), 6),
      most: expect.closeTo(1.04, 9),
    });
    expect(reported?.place.regions).toHaveLength(1);
    expect(reported?.place.at?.x).toBeGreaterThan(-0.01);
    expect(reported?.place.at?.x).toBeLessThan(5.51);
  });

  test('a wide strip keeps its floor, to no tolerance at all', () => {
    expect(found('floor-lost', strip(30, 1, 0))).toEqual([]);
  });

  test('land has no floor to lose', () => {
    expect(found('floor-lost', strip(5.5, 0))).toEqual([]);
  });
});

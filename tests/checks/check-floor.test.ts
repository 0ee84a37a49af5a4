/** Floors that are not reached, with their figures: depths by the front's own formula √(level² − gap²), φ = 1. */
import { describe, expect, test } from 'vitest';
import { type CheckedPart, checkPart } from '#support/check-part.ts';
import { polygon, rectangle, roundedRectangle } from '#support/shapes.ts';

const SHEET = rectangle(-60, -60, 300, 200);

function found(code: string, drawn: Omit<CheckedPart, 'sheet'>) {
  return checkPart({ sheet: SHEET, ...drawn }).filter((each) => each.code === code);
}

/** Two rooms of 40 by 40 that a neck of the given width joins, 6 mm long. */
const dumbbell = (x: number, neck: number) =>
  polygon([
    [x, 0],
    [x + 40, 0],
    [x + 40, 20],
    [x + 46, 20],
    [x + 46, 0],
    [x + 86, 0],
    [x + 86, 40],
    [x + 46, 40],
    [x + 46, 20 + neck],
    [x + 40, 20 + neck],
    [x + 40, 40],
    [x, 40],
  ]);

describe('(floor-not-reached)', () => {
  test('a neck of 3.9 between two rooms of 2 mm: its ridge, the least depth asked, and how much floor there is', () => {
    const [told, more] = found('floor-not-reached', { outlines: [dumbbell(0, 3.9)], depths: [[20, 20, 2]] });
    expect(more).toBeUndefined();
    const facts = told?.code === 'floor-not-reached' ? told.facts : undefined;
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
    expect(told?.place.at).toEqual({ x: expect.closeTo(43, 9), y: expect.closeTo(21.95, 9) });
    expect(told?.place.regions).toHaveLength(1);
    const [way] = told?.place.outline ?? [];
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
    const told = both.map(({ facts }) => ('width' in facts ? Number(facts.width.toFixed(9)) : 0));
    expect([...new Set(told)]).toEqual([3.2, 3.9]);
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
    const [told] = necks(3.5);
    expect(told?.facts).toMatchObject({ width: expect.closeTo(3.5, 9), needed: expect.closeTo(3.6, 9) });
  });
});

describe('(floor-mostly-wall)', () => {
  const square = (x: number, side: number) => roundedRectangle(x, 0, x + side, side, 3.5);

  test('one finding a stage: the region with the least floor speaks, with all that are mostly wall', () => {
    const told = found('floor-mostly-wall', {
      outlines: [square(0, 15.4), square(40, 14), square(80, 40), square(140, 15)],
      depths: [
        [8, 8, 3],
        [47, 7, 3],
        [100, 20, 3],
        [147, 7, 2.95],
      ],
    });
    const [deep, less] = told;
    expect(told.map(({ facts }) => ('stage' in facts ? facts.stage : 0))).toEqual(
      [1, 2].slice(0, told.length),
    );
    expect(deep?.facts).toMatchObject({
      regions: 2,
      limit: 0.5,
      area: expect.closeTo(14 ** 2 - (4 - Math.PI) * 3.5 ** 2, 6),
    });
    expect(deep?.place.at?.x).toBeGreaterThan(39);
    expect(deep?.place.at?.x).toBeLessThan(55);
    expect(deep?.place.regions).toEqual([...(deep?.place.regions ?? [])].sort());
    expect(deep?.place.regions).toHaveLength(2);
    expect(less?.place.regions).toHaveLength(1);
    const { share, floorArea, area } =
      deep?.code === 'floor-mostly-wall' ? deep.facts : { share: 0, floorArea: 0, area: 1 };
    expect(share).toBeCloseTo(floorArea / area, 9);
    expect(share).toBeLessThan(0.5);
  });

  test('a region that is not opened at all is told as that alone', () => {
    const codes = checkPart({
      sheet: SHEET,
      outlines: [rectangle(0, 0, 60, 3)],
      depths: [[30, 1, 2]],
    }).map(({ code }) => code);
    expect(codes).toEqual(['opening-missing']);
  });
});

test('(floor-lost) names the strip that two deeper neighbours take, and where it is', () => {
  const drawn: CheckedPart = {
    sheet: rectangle(-40, 0, 45.5, 60),
    outlines: [rectangle(-40, 0, 0, 60), rectangle(0, 0, 5.5, 60), rectangle(5.5, 0, 45.5, 60)],
    depths: [
      [-20, 30, 3],
      [2, 30, 1],
      [25, 30, 3],
    ],
    edgeDatum: 'deep-foot',
  };
  const [told] = checkPart(drawn).filter(({ code }) => code === 'floor-lost');
  expect(told?.place.regions).toHaveLength(1);
  expect(told?.place.at?.x).toBeGreaterThan(-0.01);
  expect(told?.place.at?.x).toBeLessThan(5.51);
});

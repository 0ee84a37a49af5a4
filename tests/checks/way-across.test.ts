/** What lies beside a place on the part, and along the way across a narrow one. */
import { describe, expect, test } from 'vitest';
import { overhangs } from '#checks/check-overhang.ts';
import { pieceParts } from '#checks/check-piece-parts.ts';
import type { MakingPlace, PlaceRule } from '#checks/making.ts';
import { makingPlace } from '#checks/making-place.ts';
import type { NarrowPlace } from '#checks/narrow-places.ts';
import { lookAround } from '#checks/surroundings.ts';
import { isAllIn, pointOn, regionsBeside } from '#checks/way-across.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { type Loop, loopsArea } from '#geometry/span.ts';
import { JUST_BESIDE } from '#geometry/tolerances.ts';
import type { Masking } from '#job/job.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { measurePlan } from '#run/measure-plan.ts';
import { polygon, rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

type Depth = readonly [x: number, y: number, depth: number];

function placeOf(
  outlines: readonly Loop[],
  depths: readonly Depth[],
  { factor = 1, masking, sheet }: { factor?: number; masking?: Masking; sheet?: Loop } = {},
): MakingPlace {
  const part = partOf({ ...(sheet && { sheet }), outlines });
  const job = plainJob({ etchFactor: [[0, factor]], levels: 'as-drawn', ...(masking && { masking }) });
  const plan = makePlan({ part, asked: askedAt(part, depths), job });
  const { kit, regions } = measurePlan(plan, job);
  return makingPlace({ plan, job, kit: kit(), reached: regions }).place;
}

const idAt = ({ regions }: EtchPlan, x: number, y: number): string | undefined =>
  regions.find(({ loops }) => isInsideLoops(loops, { x, y }))?.id;

const way = (from: readonly [number, number], to: readonly [number, number]) =>
  ({
    from: { x: from[0], y: from[1] },
    to: { x: to[0], y: to[1] },
    width: Math.hypot(to[0] - from[0], to[1] - from[1]),
  }) as NarrowPlace;

/** Four bays side by side, 10 mm wide. */
function reportOf<Found>(rule: PlaceRule<Found>, place: MakingPlace) {
  return rule.report(rule.find(place), place);
}

const bays = placeOf(
  [0, 10, 20, 30].map((x) => rectangle(x, 0, x + 10, 30)),
  [5, 15, 25, 35].map((x, i) => [x, 15, 1 + i / 4] as const),
);

describe('the way across', () => {
  test('a point at a share of it, or beyond its ends', () => {
    const across = way([3, 5], [7, 8]);
    expect(pointOn(across, 0.25)).toEqual({ x: 4, y: 5.75 });
    expect(pointOn(across, -1)).toEqual({ x: -1, y: 2 });
    expect(pointOn(across, 2)).toEqual({ x: 11, y: 11 });
  });

  test('regions 0.02 mm beyond both ends, or as far as is said', () => {
    const { plan } = bays;
    const over = way([10.01, 14], [20.005, 14]);
    const [first, second, third, fourth] = [5, 15, 25, 35].map((x) => idAt(plan, x, 15));
    expect(regionsBeside(bays, over)).toEqual([first, third].sort());
    expect(regionsBeside(bays, over, -0.1)).toEqual([second]);
    // From a region to one of a name before it.
    expect(regionsBeside(bays, way([29.99, 14], [10.01, 14]))).toEqual([first, fourth].sort());
    expect(regionsBeside(bays, way([9, 14], [29.99, 14]), 9.5)).toEqual([fourth]);
  });

  test('lies in something on both sides of it', () => {
    const long = way([2, 3], [14, 8]);
    const normal = { x: -5 / 13, y: 12 / 13 };
    const side = ({ x, y }: { x: number; y: number }) => (x - 2) * normal.x + (y - 3) * normal.y;
    const asked: number[] = [];
    expect(
      isAllIn(long, (point) => {
        asked.push(side(point));
        return true;
      }),
    ).toBe(true);
    expect(asked.map(Math.abs)).toEqual(Array.from({ length: 6 }, () => expect.closeTo(JUST_BESIDE, 12)));
    expect(isAllIn(long, (point) => side(point) > 0)).toBe(false);
    expect(isAllIn(long, (point) => side(point) < 0)).toBe(false);
    for (const share of [0.25, 0.5, 0.75]) {
      const hole = pointOn(long, share);
      const isIn = ({ x, y }: { x: number; y: number }) => Math.hypot(x - hole.x, y - hole.y) > 0.01;
      expect(isAllIn(long, isIn)).toBe(false);
    }
  });
});

test('regions that meet on a border, by id, whichever was drawn first', () => {
  const { plan } = bays;
  for (const x of [10, 20, 30]) {
    const both = [idAt(plan, x - 5, 15), idAt(plan, x + 5, 15)].sort();
    expect(bays.around.regionsAt({ x, y: 15 }).map(({ id }) => id)).toEqual(both);
  }
  const turned = lookAround({
    ...plan,
    regions: plan.regions.map((each, i) => ({ ...each, id: `R${9 - i}` })),
  });
  for (const x of [10, 20, 30]) {
    const ids = turned.regionsAt({ x, y: 15 }).map(({ id }) => id);
    expect(ids).toEqual([...ids].sort());
    expect(ids).toHaveLength(2);
  }
  expect(bays.around.regionsAt({ x: 500, y: 15 })).toEqual([]);
});

test('land without end lies across an outer border; beyond a sheet lies nothing', () => {
  const across = (place: MakingPlace, x: number, y: number) => {
    const region = place.plan.regions.find(({ id }) => id === idAt(place.plan, x, y));
    return new Set(region?.loops.flat().map((span) => place.levelAcross(span)));
  };
  expect(across(bays, 5, 15)).toEqual(new Set([0, 1.25]));
  const sheet = placeOf([rectangle(0, 0, 10, 30)], [[5, 15, 1]], { sheet: rectangle(0, 0, 25, 30) });
  expect(across(sheet, 5, 15)).toEqual(new Set([undefined, 0]));
});

describe('(piece-in-many-parts)', () => {
  /** Two rooms of 20 by 20 joined by a neck 3 mm wide, or three in a row; 2 mm deep, openings keep back 2 mm. */
  const rooms = (x0: number, count: number): Loop => {
    const upper: [number, number][] = [];
    const lower: [number, number][] = [];
    for (let i = 0; i < count; i++) {
      const x = x0 + 30 * i;
      lower.push([x, 8.5], [x, 0], [x + 20, 0], [x + 20, 8.5]);
      upper.unshift([x + 20, 11.5], [x + 20, 20], [x, 20], [x, 11.5]);
    }
    return polygon([...lower.slice(1, -1), ...upper.slice(1, -1)]);
  };

  test('the region of most parts speaks for the others', () => {
    const place = placeOf(
      [rooms(0, 2), rooms(100, 3), rectangle(0, 40, 30, 70)],
      [
        [10, 5, 2],
        [110, 5, 2],
        [10, 50, 2],
      ],
    );
    const [reported, ...others] = reportOf(pieceParts, place);
    expect(others).toEqual([]);
    expect(reported?.code).toBe('piece-in-many-parts');
    expect(reported?.facts).toEqual({ parts: 3, stage: 1, regions: 2 });
    const [two, three] = [idAt(place.plan, 10, 5), idAt(place.plan, 110, 5)];
    expect(reported?.place.regions).toEqual([two, three].sort());
    expect(reported?.place.at).toEqual(place.plan.regions.find(({ id }) => id === three)?.label);
    const outline = reported?.place.outline ?? [];
    expect(outline.map(({ closed }) => closed)).toEqual([true, true, true]);
    // Rooms of 16 by 16, and a little of each neck.
    const area = loopsArea(outline.map(({ spans }) => spans));
    expect(area).toBeGreaterThan(3 * 16 * 16);
    expect(area).toBeLessThan(3 * 16 * 16 + 4);
  });

  test('parts of an opening in other regions are none of it', () => {
    const deeper = placeOf(
      [rooms(0, 2), rectangle(80, 0, 110, 30)],
      [
        [10, 5, 1],
        [90, 5, 2],
      ],
    );
    expect(reportOf(pieceParts, deeper)).toEqual([]);
    const shallower = placeOf(
      [rectangle(0, 0, 60, 40), rectangle(10, 10, 20, 30), rectangle(35, 12, 52, 30)],
      [
        [4, 4, 1],
        [15, 20, 3.5],
        [40, 20, 3],
      ],
    );
    expect(reportOf(pieceParts, shallower)).toEqual([]);
  });
});

describe('(maskant-overhang-long)', () => {
  test('the longest of a stage speaks for all of it: 5.2 mm at φ = 2.1 beside land', () => {
    const place = placeOf(
      [
        rectangle(0, 0, 60, 50),
        rectangle(60, 0, 120, 50),
        rectangle(200, 0, 260, 60),
        rectangle(300, 0, 340, 40),
      ],
      [
        [30, 25, 5.2],
        [90, 25, 0.3],
        [230, 30, 5.2],
        [320, 20, 4],
      ],
      { factor: 2.1 },
    );
    const found = reportOf(overhangs, place);
    expect(found.map(({ facts }) => facts)).toEqual([
      { overhang: expect.closeTo(2.1 * 5.2, 9), limit: 10, stage: 1, level: 5.2 },
    ]);
    const ids = [idAt(place.plan, 30, 25), idAt(place.plan, 230, 30)].sort();
    expect(found[0]?.place.regions).toEqual(ids);
    expect(ids).toContain(place.plan.regions.find(({ label }) => label === found[0]?.place.at)?.id);
  });

  test('beside a floor only the step counts, and the sheet’s own edge has no maskant over it', () => {
    const sheet = rectangle(0, 0, 60, 50);
    const depths: readonly Depth[] = [
      [10, 25, 5.2],
      [40, 25, 0.9],
    ];
    const halves = [rectangle(0, 0, 25, 50), rectangle(25, 0, 60, 50)];
    expect(reportOf(overhangs, placeOf(halves, depths, { factor: 2.1, sheet }))).toEqual([]);
    const [reported] = reportOf(overhangs, placeOf(halves, depths, { factor: 2.4, sheet }));
    expect(reported?.facts).toMatchObject({ overhang: expect.closeTo(2.4 * 4.3, 9), level: 5.2 });
  });

  test('masked again, by what the stage itself etches', () => {
    const depths: readonly Depth[] = [
      [30, 30, 5.2],
      [130, 30, 0.9],
    ];
    const outlines = [rectangle(0, 0, 70, 60), rectangle(100, 0, 160, 60)];
    const coat = (factor: number) => placeOf(outlines, depths, { factor, masking: 're-mask' });
    expect(reportOf(overhangs, coat(2.3))).toEqual([]);
    const place = coat(2.4);
    const [reported, ...others] = reportOf(overhangs, place);
    expect(others).toEqual([]);
    expect(reported?.facts).toEqual({
      overhang: expect.closeTo(2.4 * 4.3, 9),
      limit: 10,
      stage: 2,
      level: 5.2,
    });
    expect(reported?.place.regions).toEqual([idAt(place.plan, 30, 30)]);
  });
});

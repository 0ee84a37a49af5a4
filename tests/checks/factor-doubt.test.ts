/** What the doubt of the etch factor does besides moving lines: land and floors on the front with the factor at either end of it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkCouponDepth } from '#checks/check-coupon-depth.ts';
import { floors } from '#checks/check-floor.ts';
import { checkMaking } from '#checks/check-making.ts';
import type { Making } from '#checks/making.ts';
import { makingPlace } from '#checks/making-place.ts';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { indexFront } from '#front/front-index.ts';
import { reachedRegions } from '#front/reached-regions.ts';
import type { Loop } from '#geometry/span.ts';
import type { EdgeDatum, Job } from '#job/job.ts';
import { makePlan } from '#plan/make-plan.ts';
import { measurePlan } from '#run/measure-plan.ts';
import { runJob } from '#run/run-job.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';
import { polygon, rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';
import { planOf, randomPart } from '#support/random-parts/random-part.ts';

type Pocket = readonly [x: number, y: number, depth: number];

function judged(
  outlines: readonly Loop[],
  pockets: readonly Pocket[],
  factorSpread: number,
  {
    sheet = rectangle(-60, -50, 160, 120),
    edgeDatum,
  }: { readonly sheet?: Loop; readonly edgeDatum?: EdgeDatum } = {},
) {
  const part = partOf({ sheet, outlines });
  const plain = plainJob(edgeDatum && { edgeDatum });
  const job: Job = { ...plain, process: { ...plain.process, factorSpread } };
  const plan = makePlan({ part, asked: askedAt(part, pockets), job });
  const { groups, regions: reached } = measurePlan(plan, job);
  const found = checkMaking({ plan, job, reached }, groups);
  return found.filter(({ code }) => code === 'factor-doubt-matters');
}

describe('M6.7 the doubt of the factor', () => {
  // Two pockets of 2 mm with 5.3 mm of land between them: 2 × 2 mm deep asks for 4 mm; each side moves by 2 δφ.
  const pair = [rectangle(0, 0, 30, 25), rectangle(35.3, 0, 70, 31)];
  const deep: readonly Pocket[] = [
    [15, 12, 2],
    [50, 12, 2],
  ];

  test('factor-doubt-matters: land of 5.3 mm is left 3.7 wide by a factor of 1.4, where twice 2 mm is needed', () => {
    const [finding, ...others] = judged(pair, deep, 0.4);
    expect(others).toEqual([]);
    expect(finding).toMatchObject({
      code: 'factor-doubt-matters',
      facts: { of: 'land', by: 0.4, factor: 1, limit: 4, value: expect.closeTo(3.7, 4) },
    });
    expect(finding?.place.regions).toHaveLength(1);
  });

  test('with ± 0.2 it stays 4.5 wide, and nothing is reported; nor without any doubt', () => {
    expect(judged(pair, deep, 0.2)).toEqual([]);
    expect(judged(pair, deep, 0)).toEqual([]);
  });

  test('a neck of 3.9 mm, 0.1 long, that the etch from its rooms just reaches: with a factor of 0.9 it does not', () => {
    const rooms = polygon([
      [0, 0],
      [19, 0],
      [40, 20],
      [40.1, 20],
      [57, 0],
      [77, 0],
      [77, 43],
      [59, 43],
      [40.1, 23.9],
      [40, 23.9],
      [25, 40],
      [0, 40],
    ]);
    // The rooms' openings end where the ridge is 2 mm from the corners of the mouth.
    const away = 0.1 / 2 + Math.sqrt(2 ** 2 - 1.95 ** 2);
    const [reported, ...others] = judged([rooms], [[20, 20, 2]], 0.1);
    expect(others).toEqual([]);
    expect(reported?.facts).toEqual({
      of: 'neck',
      value: expect.closeTo(Math.sqrt(2 ** 2 - (away / 0.9) ** 2), 6),
      limit: 1.94,
      by: -0.1,
      factor: 1,
      places: 1,
    });
    expect(judged([rooms], [[20, 20, 2]], 0.01)).toEqual([]);
  });

  test('a pocket of 6.9 mm, 2 mm deep: more than half is floor at φ = 1, less at φ = 0.5', () => {
    const found = judged([rectangle(0, 0, 6.9, 40)], [[3, 20, 2]], 0.5);
    expect(found.map(({ facts }) => 'of' in facts && facts.of)).toEqual(['share']);
  });
});

describe('M6.7 a strip of 1 mm between two floors of 3 mm, the drawn lines at the foot of their walls', () => {
  /** The walls take φ √(3² − 1.04²) of the strip on either side before its floor is too deep. */
  const taken = Math.sqrt(3 ** 2 - 1.04 ** 2);
  const strip = (width: number, factorSpread: number) =>
    judged(
      [rectangle(-40, 0, 0, 60), rectangle(0, 0, width, 60), rectangle(width, 0, width + 30, 60)],
      [
        [-20, 30, 3],
        [2, 30, 1],
        [width + 20, 30, 3],
      ],
      factorSpread,
      { sheet: rectangle(-40, 0, width + 30, 60), edgeDatum: 'deep-foot' },
    );

  test('6 mm wide, the walls leave 0.37 of its floor, and none with a factor of 1.07', () => {
    const [reported, ...others] = strip(6, 0.07);
    expect(others).toEqual([]);
    expect(reported?.facts).toEqual({
      of: 'floor',
      value: expect.closeTo(Math.sqrt(3 ** 2 - (3 / 1.07) ** 2), 6),
      limit: expect.closeTo(1.04, 9),
      by: 0.07,
      factor: 1,
      places: 1,
    });
    expect(strip(6, 0.05)).toEqual([]);
  });

  test('12 mm wide, 0.53 of it is floor, and less than half with a factor of 1.07', () => {
    const [reported, ...others] = strip(12, 0.07);
    expect(others).toEqual([]);
    expect(reported?.facts).toMatchObject({
      of: 'share',
      by: 0.07,
      value: expect.closeTo(1 - (2 * 1.07 * taken) / 12, 6),
    });
    expect(strip(12, 0.06)).toEqual([]);
  });
});

describe('M6.7 what is reported it', () => {
  // Land of 5.3 mm as above, and two slots of which less than half is floor at another factor: 6.9 and 6.7 mm wide, 2 mm deep.
  const outlines = [
    rectangle(0, 0, 30, 25),
    rectangle(35.3, 0, 70, 31),
    rectangle(90, 0, 96.9, 40),
    rectangle(120, -10, 126.7, 30),
  ];
  const deep: readonly Pocket[] = [
    [15, 12, 2],
    [50, 12, 2],
    [93, 20, 2],
    [123, 20, 2],
  ];

  test('one for each rule, its worst place first, with all regions by id', () => {
    const found = judged(outlines, deep, 0.5);
    const [land, share, ...others] = found;
    expect(others).toEqual([]);
    expect(land?.facts).toMatchObject({
      of: 'land',
      by: 0.5,
      limit: 4,
      value: expect.closeTo(3.3, 4),
      places: 1,
    });
    expect(land?.place.at?.x).toBeCloseTo(32.65, 2);
    expect(share?.facts).toMatchObject({ of: 'share', by: -0.5, factor: 1, limit: 0.5, places: 1 });
    const value = share !== undefined && 'value' in share.facts ? share.facts.value : Number.NaN;
    expect(value).toBeGreaterThan(0);
    expect(value).toBeLessThan(0.5);
    const regions = share?.place.regions ?? [];
    expect(regions).toHaveLength(2);
    expect(regions).toEqual([...regions].sort());
    expect(share?.place.at?.x).toBeGreaterThan(89);
  });

  test.each([
    [2, 3],
    [3, 2],
  ])(
    'two slots of two stages, %f deep on the left and %f on the right, are one place by their ids',
    (left, right) => {
      // In each, rather more than half of it is floor at φ = 1, and less than half at φ = 0.5.
      const slots = [rectangle(0, -40, 3.45 * left, 110), rectangle(50, -40, 50 + 3.45 * right, 110)];
      const [share, ...others] = judged(
        slots,
        [
          [3, 20, left],
          [53, 20, right],
        ],
        0.5,
      );
      expect(others).toEqual([]);
      expect(share?.facts).toMatchObject({ of: 'share', by: -0.5, places: 2 });
      expect(share?.place.regions).toEqual(['R2', 'R3']);
    },
  );

  test('what the plan itself lacks is reported by its own rule alone, and no doubt says nothing', () => {
    // 6.1 mm: less than half of it is floor as planned, too.
    expect(judged([rectangle(0, 0, 6.1, 40)], [[3, 20, 2.6]], 0.1)).toEqual([]);
    expect(judged(outlines, deep, 0)).toEqual([]);
  });
});

test('M6.7 regions far from a limit need no measuring: the same floors are lost as when all are measured', {
  tags: ['long'],
}, () => {
  fc.assert(
    fc.property(randomPart, fc.constantFrom(0.06, 0.17, 0.43), (drawn, factorSpread) => {
      const plan = planOf(drawn);
      const plain = plainJob({ etchFactor: plan.etchFactor });
      const job: Job = { ...plain, process: { ...plain.process, factorSpread } };
      const { kit, groups, regions: reached } = measurePlan(plan, job);
      const making = { plan, job, kit: kit(), reached };
      const known = floorCodes(making);
      const all = [factorSpread, -factorSpread].flatMap((by) => {
        const { front } = making.kit.index;
        const doubted = makeContourKit(
          indexFront({
            ...front,
            etchFactor: front.etchFactor.map(([at, each]) => [at, Math.max(0, each + by)]),
          }),
        );
        return floorCodes({ ...making, kit: doubted, reached: reachedRegions(doubted, plan.regions) });
      });
      const regions = new Set(
        all.filter((each) => !known.includes(each)).flatMap((each) => each.split(' ').slice(1)),
      );
      const found = checkMaking(making, groups).filter(
        (each) => each.code === 'factor-doubt-matters' && each.facts.of !== 'land',
      );
      expect(new Set(found.flatMap(({ place }) => place.regions ?? []))).toEqual(regions);
    }),
    { numRuns: Number(process.env['RUNS'] ?? 120) },
  );
});

function floorCodes(making: Making): string[] {
  return floors
    .report(floors.find(makingPlace(making).place), making)
    .map(({ code, place }) => [code, ...(place.regions ?? [])].join(' '));
}

describe('the depth of the coupon', () => {
  const planOf = (depth: number) => {
    const part = partOf({ outlines: [rectangle(0, 0, 30, 25)] });
    return makePlan({ part, asked: askedAt(part, [[15, 12, depth]]), job: plainJob() });
  };
  const coupon = (depth: number) => ({
    before: 3,
    after: 2.9,
    minutes: 4,
    faces: 1 as const,
    gauge: 0.005,
    opening: { before: 10, after: 10 + 2 * depth, depth, gauge: 0.02 },
  });

  test('coupon-depth-differs: 0.14 mm, used to 2.1 mm, 15 times that', () => {
    const [finding] = checkCouponDepth(planOf(2.1), [coupon(0.14), coupon(0.1)]);
    expect(finding).toMatchObject({
      code: 'coupon-depth-differs',
      facts: { coupon: 0.14, deepest: 2.1, times: expect.closeTo(15, 9), limit: 2 },
    });
  });

  test('a coupon of about that depth says nothing, nor does one without an opening', () => {
    expect(checkCouponDepth(planOf(2.1), [coupon(1.2)])).toEqual([]);
    expect(
      checkCouponDepth(planOf(2.1), [{ before: 3, after: 2.9, minutes: 4, faces: 2, gauge: 0.005 }]),
    ).toEqual([]);
  });
});

describe('process.factorSpread where the job does not say', () => {
  const spreadOf = async (process: object) => {
    const job = { ...buoyLidJob, process: { ...buoyLidJob.process, ...process } };
    const bytes = new TextEncoder().encode(buoyLidDrawing);
    const { planFile } = await runJob(
      { jobText: JSON.stringify(job), drawingName: 'buoy-lid.dxf', drawingBytes: bytes },
      { withoutFiles: true },
    );
    return planFile?.provenance.find(({ quantity }) => quantity === 'etch factor spread');
  };

  test('a tenth of a factor that is given, from memory', async () => {
    expect(await spreadOf({ etchFactor: 0.8 })).toMatchObject({ value: 0.08, kind: 'memory' });
  });

  test('the wider side of what is seen of a bath: 1.0, from 0.57 to 1.2', async () => {
    expect(await spreadOf({ etchFactor: undefined, bath: 'caustic-aluminium' })).toMatchObject({
      value: 0.43,
    });
  });

  test('what a coupon leaves open: 1.96 of its gauges', async () => {
    const opening = { before: 10, after: 14.4, depth: 2, gauge: 0.02 };
    const coupon = { before: 5, after: 3, minutes: 80, faces: 1, opening };
    const u = Math.hypot((Math.SQRT2 * 0.02) / Math.sqrt(3) / 4, (1.1 * 0.005) / Math.sqrt(3) / 2);
    const spread = await spreadOf({ etchFactor: undefined, rate: undefined, coupon });
    expect(spread).toMatchObject({ kind: 'measured', value: expect.closeTo(1.96 * u, 4) });
  });
});

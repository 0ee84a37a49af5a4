/** Inspection points of a plate that is etched on both faces, and of regions that are not plain floors: figures by hand. */
import { describe, expect, test } from 'vitest';
import { frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { distanceToSpan, type Loop } from '#geometry/span.ts';
import {
  firstOfRegions,
  type InspectionPoint,
  inspectionPoints,
} from '#handoff/inspection/inspection-points.ts';
import type { Asked } from '#part/part.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

const SHEET = rectangle(0, 0, 400, 200);
const NEAR = rectangle(40, 40, 240, 160);
const FAR = rectangle(170, 30, 370, 170);
const job = plainJob({ levels: 'as-drawn' });
const stock = { ...job.stock, plus: 0.13, minus: 0.04 };

function planned(near: readonly Loop[], depths: Parameters<typeof askedAt>[1]): EtchPlan {
  const part = partOf({ sheet: SHEET, outlines: near });
  const far = partOf({ sheet: SHEET, outlines: [FAR] });
  const regions = far.regions.map((region) => ({ ...region, id: region.id.replace('R', 'F') }));
  return makePlan({
    part,
    asked: askedAt(part, depths, { plus: 0.08, minus: 0.02 }),
    far: {
      part: { ...far, regions },
      asked: askedAt({ ...far, regions }, [[300, 100, 1.5]], { plus: 0.05, minus: 0.03 }),
    },
    job,
  });
}

/** The plan with something else asked of the regions that hold a point. */
function asking(plan: EtchPlan, at: { x: number; y: number }, asked: Partial<Asked>): EtchPlan {
  const regions = plan.regions.map((region) =>
    isInsideLoops(region.loops, at) ? { ...region, asked: { ...region.asked, ...asked } } : region,
  );
  return { ...plan, regions };
}

function pointsIn(plan: EtchPlan, choice = { margin: 3, spacing: 45 }) {
  const index = indexFront(frontOfPlan(plan, 6));
  const far = plan.far && indexFront(frontOfPlan(plan.far, 6));
  return inspectionPoints({ plan, index, far, stock, choice });
}

const isIn = (loop: Loop) => (point: InspectionPoint) => isInsideLoops([loop], point.at);
const gapTo = (loop: Loop, { at }: InspectionPoint) =>
  Math.min(...loop.map((span) => distanceToSpan(span, at)));
const figure = (nominal: number, plus: number, minus: number) => ({
  nominal: expect.closeTo(nominal, 9),
  plus: expect.closeTo(plus, 9),
  minus: expect.closeTo(minus, 9),
});

describe('points of both faces', () => {
  const plan = planned([NEAR], [[60, 60, 2]]);

  test('those of the near face come first, and those of the far one say so', () => {
    const { points, findings } = pointsIn(plan);
    expect(findings).toEqual([]);
    const near = points.filter(({ face }) => face === undefined);
    const far = points.filter(({ face }) => face === 'far');
    expect(points).toEqual([...near, ...far]);
    expect(points.map(({ id }) => id)).toEqual(points.map((_, at) => `P${String(at + 1).padStart(3, '0')}`));
    expect(new Set(near.map(({ region }) => region))).toEqual(new Set(plan.regions.map(({ id }) => id)));
    expect(new Set(far.map(({ region }) => region))).toEqual(new Set(plan.far?.regions.map(({ id }) => id)));
  });

  test('what is left is the sheet less both depths, off by what either may be off', () => {
    const { points } = pointsIn(plan);
    const left = (face: InspectionPoint['face'], inNear: boolean, inFar: boolean) => {
      const there = points.filter(
        (each) => each.face === face && isIn(NEAR)(each) === inNear && isIn(FAR)(each) === inFar,
      );
      expect(there.length).toBeGreaterThan(0);
      return there.map(({ thickness }) => thickness);
    };
    for (const face of [undefined, 'far'] as const) {
      for (const both of left(face, true, true)) expect(both).toEqual(figure(2.5, 0.05, 0.13));
    }
    // A floor before land: as if the other face were not there.
    for (const near of left(undefined, true, false)) expect(near).toEqual(figure(4, 0.02, 0.08));
    for (const far of left('far', false, true)) expect(far).toEqual(figure(4.5, 0.03, 0.05));
    // Land before a floor: the sheet as it comes, and the floor.
    for (const land of left(undefined, false, true)) expect(land).toEqual(figure(4.5, 0.16, 0.09));
    for (const land of left('far', true, false)) expect(land).toEqual(figure(4, 0.15, 0.12));
    for (const land of left(undefined, false, false)) expect(land).toEqual(figure(6, 0.13, 0.04));
  });

  test('a point is clear of the walls of both faces', () => {
    const { points: wide } = pointsIn(plan, { margin: 12, spacing: 20 });
    expect(wide.length).toBeGreaterThan(20);
    for (const point of wide)
      for (const wall of [NEAR, FAR, SHEET]) expect(gapTo(wall, point)).toBeGreaterThanOrEqual(12 - 1e-9);
  });

  test('nothing is gauged over what the far face cuts out, nor on it', () => {
    const far = plan.far && asking(plan.far, { x: 300, y: 100 }, { wall: 1 });
    const { points: left, findings: missing } = pointsIn({ ...plan, ...(far && { far }) });
    expect(missing).toEqual([]);
    expect(left.some(isIn(NEAR))).toBe(true);
    expect(left.filter(isIn(FAR))).toEqual([]);
  });

  test('without the front of the far face the near one is gauged by itself', () => {
    const index = indexFront(frontOfPlan(plan, 6));
    const alone = inspectionPoints({ plan, index, stock, choice: { margin: 3, spacing: 45 } }).points;
    expect(alone.every(({ face }) => face === undefined)).toBe(true);
    const over = alone.filter((each) => isIn(NEAR)(each) && isIn(FAR)(each));
    expect(over.length).toBeGreaterThan(0);
    for (const { thickness } of over) expect(thickness).toEqual(figure(4, 0.02, 0.08));
  });
});

describe('regions that are no plain floor', () => {
  const plan = { ...planned([NEAR], [[60, 60, 2]]) };
  delete plan.far;

  test('what is cut out is not gauged, and is not missed', () => {
    const { points, findings } = pointsIn(asking(plan, { x: 60, y: 60 }, { wall: 1.2 }));
    expect(points.filter(isIn(NEAR))).toEqual([]);
    expect(points.length).toBeGreaterThan(2);
    expect(findings).toEqual([]);
  });

  test('land of which a little is asked is judged by that, and a floor of which nothing is asked by its tolerance', () => {
    const thin = pointsIn(asking(plan, { x: 10, y: 10 }, { depth: 0.02, plus: 0.01, minus: 0.03 })).points;
    expect(thin.find(({ stage }) => stage === 0)).toMatchObject({
      depth: figure(0.02, 0.01, 0.03),
      thickness: figure(5.98, 0.03, 0.01),
      planned: 0,
    });
    const runOut = pointsIn(asking(plan, { x: 60, y: 60 }, { depth: 0 })).points;
    expect(runOut.find(isIn(NEAR))).toMatchObject({ depth: figure(0, 0.08, 0.02), planned: 2, stage: 1 });
  });

  test('land round a pocket has none of its points on the island in it', () => {
    const island = rectangle(110, 70, 180, 130);
    const drawn = { ...planned([NEAR, island], [[60, 60, 2]]) };
    delete drawn.far;
    const { points } = pointsIn(drawn);
    for (const { region, at } of points)
      expect(isInsideLoops(drawn.regions.find(({ id }) => id === region)?.loops ?? [], at)).toBe(true);
    expect(points.filter(isIn(island)).length).toBeGreaterThan(2);
  });

  test('places are looked for on a grid of 24 along the longer side and as near as that along the other, 9 at least', () => {
    const strip = rectangle(40, 30, 64, 174);
    const drawn = {
      ...planned(
        [rectangle(140, 60, 340, 180), strip],
        [
          [200, 100, 2],
          [50, 100, 1],
        ],
      ),
    };
    delete drawn.far;
    const { points } = pointsIn(drawn, { margin: 3, spacing: 14 });
    const onGrid = (
      own: readonly InspectionPoint[],
      from: number,
      side: number,
      count: number,
      of: 'x' | 'y',
    ) => {
      expect(own.length).toBeGreaterThan(12);
      for (const { at } of own) {
        const cell = ((at[of] - from) / side) * count - 0.5;
        // To a hundredth of a millimetre.
        expect(Math.abs(cell - Math.round(cell))).toBeLessThanOrEqual((0.0051 * count) / side);
      }
    };
    const wide = points.filter(({ planned }) => planned === 2);
    // 200 by 120: steps of 8.33 mm, 14 of them across. 24 by 144: steps of 6 would be 4, so that there are 9.
    onGrid(wide, 140, 200, 24, 'x');
    onGrid(wide, 60, 120, 14, 'y');
    // The land has 24 by 12: half of 16.67 in from its corner.
    expect(points.filter(({ stage }) => stage === 0).map(({ at }) => at)).toContainEqual({
      x: 391.67,
      y: 191.67,
    });
    const high = points.filter(({ planned }) => planned === 1);
    onGrid(high, 40, 24, 9, 'x');
    onGrid(high, 30, 144, 24, 'y');
  });
});

test('of each region the first point, in their order', () => {
  const at = { x: 0, y: 0 };
  const none = { nominal: 0, plus: 0, minus: 0 };
  const point = (id: string, region: string) => ({
    id,
    region,
    at,
    stage: 1,
    depth: none,
    thickness: none,
    planned: 0,
  });
  const all = [point('P001', 'R02'), point('P002', 'R02'), point('P003', 'R01'), point('P004', 'R02')];
  expect(firstOfRegions(all).map(({ id }) => id)).toEqual(['P001', 'P003']);
});

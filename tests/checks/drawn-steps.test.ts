/** The drawn edges of a plan by step and tolerance: their lengths, where they are shown, and how far out they lie. */
import { describe, expect, test } from 'vitest';
import { drawnSteps, drawnStepsOfBoth } from '#checks/drawn-steps.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Asked } from '#part/part.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { polygon, rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import type { CheckedPart } from '#support/parts/check-part.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

type Drawn = Pick<CheckedPart, 'outlines' | 'depths'> & { readonly sheet?: CheckedPart['sheet'] };

const RULES = { lineTolerance: undefined };

/** Its middle is (70, 30). */
const SHEET = rectangle(-60, -60, 200, 120);

/** A floor of 1 with one of 2 in it, and one of 2 in the land. */
const FLOORS: Drawn = {
  sheet: SHEET,
  outlines: [
    polygon([
      [0, 0],
      [100, 0],
      [100, 60],
      [-3, 60],
    ]),
    polygon([
      [20, 15],
      [75, 15],
      [70, 45],
      [20, 45],
    ]),
    polygon([
      [120, 10],
      [150, 10],
      [145, 32],
      [120, 32],
    ]),
  ],
  depths: [
    [5, 30, 1],
    [40, 30, 2],
    [130, 20, 2],
  ],
};

function planOf(drawn: Drawn, more: (depth: number, order: number) => Partial<Asked> = () => ({})): EtchPlan {
  const part = partOf(drawn);
  const etched = [...askedAt(part, drawn.depths)].filter(([, { depth }]) => depth > 0);
  const asked = new Map(
    etched.map(([id, each], order) => [id, { ...each, ...more(each.depth, order) }] as const),
  );
  return makePlan({ part, asked, job: plainJob() });
}

function regionAt({ regions }: EtchPlan, x: number, y: number) {
  return regions.find(({ loops }) => isInsideLoops(loops, { x, y }))?.id;
}

describe('by level, the deepest first, and then by what is beside it, the shallowest first', () => {
  test('each with its length, the middle of its longest edge and the place that is farthest out', () => {
    const plan = planOf(FLOORS);
    expect(drawnSteps(plan, RULES)).toMatchObject([
      {
        level: 2,
        beside: 0,
        asked: undefined,
        regions: [regionAt(plan, 130, 20)],
        length: expect.closeTo(30 + 22 + 25 + Math.hypot(5, 22), 9),
        at: { x: 135, y: 10 },
        farthest: expect.closeTo(Math.hypot(150 - 70, 10 - 30), 9),
      },
      {
        level: 2,
        beside: 1,
        regions: [regionAt(plan, 40, 30)],
        length: expect.closeTo(55 + 30 + 50 + Math.hypot(5, 30), 9),
        at: { x: 47.5, y: 15 },
        farthest: expect.closeTo(Math.hypot(20 - 70, 15 - 30), 9),
      },
      {
        level: 1,
        beside: 0,
        regions: [regionAt(plan, 5, 30)],
        length: expect.closeTo(100 + 60 + 103 + Math.hypot(3, 60), 9),
        at: { x: 48.5, y: 60 },
        farthest: expect.closeTo(Math.hypot(-3 - 70, 60 - 30), 9),
      },
    ]);
  });

  test('two floors of one depth in the land are one step, of both regions', () => {
    const drawn: Drawn = {
      ...FLOORS,
      depths: [
        [5, 30, 2],
        [40, 30, 2],
        [130, 20, 2],
      ],
    };
    const plan = planOf(drawn);
    const [step, more] = drawnSteps(plan, RULES);
    expect(more).toBeUndefined();
    expect(step?.regions).toEqual([regionAt(plan, 5, 30), regionAt(plan, 130, 20)].sort());
    expect(step?.length).toBeCloseTo(
      100 + 60 + 103 + Math.hypot(3, 60) + 30 + 22 + 25 + Math.hypot(5, 22),
      9,
    );
  });
});

describe('by tolerance', () => {
  const apart: Drawn = {
    sheet: SHEET,
    outlines: [rectangle(0, 0, 50, 40), rectangle(80, 0, 120, 33)],
    depths: [
      [10, 10, 2],
      [100, 10, 2],
    ],
  };

  test.each([
    [0.3, 0.1],
    [0.1, 0.3],
  ])('edges of one step with plus %f and %f are two, the closer one first', (left, right) => {
    const plus = [left, right];
    const plan = planOf(apart, (_, order) => ({ edge: { plus: plus[order] ?? 0, minus: 0.2 } }));
    expect(drawnSteps(plan, { lineTolerance: 0.5 }).map(({ asked }) => asked)).toEqual([
      { plus: 0.1, minus: 0.2 },
      { plus: 0.3, minus: 0.2 },
    ]);
  });

  test('the job’s own counts for edges that have none', () => {
    expect(drawnSteps(planOf(apart), { lineTolerance: 0.5 }).map(({ asked }) => asked)).toEqual([
      { plus: 0.5, minus: 0.5 },
    ]);
  });

  test('what is cut out is apart from what is not, and says where the line stands on its wall', () => {
    const plan = planOf(apart, (_, order) => (order === 0 ? { wall: 1.7 } : {}));
    const steps = drawnSteps(plan, RULES);
    expect(steps).toHaveLength(2);
    expect(steps.map(({ wall }) => wall)).toEqual(expect.arrayContaining([1.7, undefined]));
    expect(steps.filter((step) => 'wall' in step)).toHaveLength(1);
  });
});

describe('what is no drawn edge', () => {
  const sideBySide: Drawn = {
    sheet: rectangle(0, 0, 100, 50),
    outlines: [rectangle(0, 0, 40, 50), rectangle(40, 0, 100, 50)],
    depths: [
      [20, 20, 1.4],
      [70, 20, 1.1],
    ],
  };

  test('the sheet’s edge', () => {
    expect(drawnSteps(planOf(sideBySide), RULES)).toMatchObject([{ level: 1.4, beside: 1.1, length: 50 }]);
  });

  test('a cut between two strips of one taper; but between strips of two, or a strip and a floor, it is one', () => {
    const plan = planOf(sideBySide);
    const taper: PlannedRegion['taper'] = { tapers: [], low: 1, high: 1.5, plus: 0.04, minus: 0.06 };
    const stripped = (ids: readonly [string, string], isTapered: readonly [boolean, boolean]): EtchPlan => ({
      ...plan,
      regions: plan.regions.map((region, i) => ({
        ...region,
        id: ids[i] ?? '',
        ...(isTapered[i] === true && { taper }),
      })) as PlannedRegion[],
    });
    const lengths = (changed: EtchPlan) => drawnSteps(changed, RULES).map(({ length }) => length);
    expect(lengths(stripped(['R07.1', 'R07.2'], [true, true]))).toEqual([]);
    expect(lengths(stripped(['R07.1', 'R08.1'], [true, true]))).toEqual([50]);
    expect(lengths(stripped(['R07.1', 'R07.2'], [true, false]))).toEqual([50]);
    expect(lengths(stripped(['R07.1', 'R07.2'], [false, true]))).toEqual([50]);
  });
});

test('without a sheet land goes on for ever, and the part’s middle is that of its floors', () => {
  const plan = planOf({ outlines: [rectangle(10, 4, 50, 34)], depths: [[20, 20, 2]] });
  expect(drawnSteps(plan, RULES)).toMatchObject([
    { level: 2, beside: 0, length: 140, farthest: expect.closeTo(25, 9) },
  ]);
});

test('of two faces the near one’s steps come first', () => {
  const near = planOf(FLOORS);
  const far = planOf({ ...FLOORS, outlines: [rectangle(10, 4, 50, 34)], depths: [[20, 20, 2.2]] });
  expect(drawnStepsOfBoth(near, RULES).map(({ level }) => level)).toEqual([2, 2, 1]);
  expect(drawnStepsOfBoth({ ...near, far }, RULES).map(({ level }) => level)).toEqual([2, 2, 1, 2.2]);
});

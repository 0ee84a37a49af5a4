/** M9.6 the thinnest metal between openings written by hand, and small rules by their figures. */
import { describe, expect, test } from 'vitest';
import { checkCouponDepth } from '#checks/check-coupon-depth.ts';
import { type EtchedFace, thinWebs } from '#checks/web-between.ts';
import type { Loop } from '#geometry/span.ts';
import type { Masking } from '#job/job.ts';
import { makePlan } from '#plan/make-plan.ts';
import { circle, rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { checkPart } from '#support/parts/check-part.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

const face = (factor: number, ...stages: readonly (readonly [level: number, ...opening: Loop[]])[]) =>
  ({
    etchFactor: [[0, factor]],
    stages: stages.map(([level, ...opening]) => ({ level, base: 0, opening })),
    regions: [],
  }) satisfies EtchedFace;

const webs = (plan: EtchedFace, far: EtchedFace, under = 2, registration = 0) =>
  thinWebs({ plan, far, registration, sheetAt: () => 4, leastOver: () => 4, under });

describe('thin webs', () => {
  test('slantwise between two discs, φ = 1.6: the place lies on the way, nearer to the shallower one', () => {
    // Middles 13 apart along (5, 12); radii 6 and 5.5: openings 1.5 apart; 2 and 1 mm deep.
    const [one, ...others] = webs(face(1.6, [2, circle(2, 3, 6)]), face(1.6, [1, circle(7, 15, 5.5)]), 3);
    expect(others).toEqual([]);
    const gap = 1.5 / 1.6;
    expect(one?.web).toBeCloseTo(4 - Math.sqrt(9 - gap * gap), 6);
    // Both slope alike two thirds of the way over.
    expect(one?.at.x).toBeCloseTo(2 + (7 * 5) / 13, 3);
    expect(one?.at.y).toBeCloseTo(3 + (7 * 12) / 13, 3);
    expect([one?.near, one?.far]).toEqual([2, 1]);
  });

  test('the far face off by 0.4: the openings are as near as if the gap were that much less, and no nearer than touching', () => {
    const [one, other] = [face(1.6, [2, circle(2, 3, 6)]), face(1.6, [1, circle(7, 15, 5.5)])];
    const [web] = webs(one, other, 3, 0.4);
    expect(web?.web).toBeCloseTo(4 - Math.sqrt(9 - (1.1 / 1.6) ** 2), 6);
    expect(webs(one, other, 3, 2.2)[0]?.web).toBeCloseTo(1, 6);
  });

  test('where one alone goes deeper than both together, at its own edge', () => {
    // 2.9 apart at φ = 1: √(3² − 2.9²) = 0.77 is less than the 2.5 of the near opening alone.
    const [one] = webs(face(1, [2.5, rectangle(0, 0, 10, 8)]), face(1, [0.5, rectangle(12.9, 0, 20, 8)]));
    expect(one?.web).toBeCloseTo(1.5, 9);
    expect(one?.at.x).toBeCloseTo(10, 9);
    const [other] = webs(face(1, [0.5, rectangle(12.9, 0, 20, 8)]), face(1, [2.5, rectangle(0, 0, 10, 8)]));
    expect(other?.web).toBeCloseTo(1.5, 9);
    expect(other?.at.x).toBeCloseTo(10, 9);
  });

  test('each two openings of the same stages that pass each other have a web of their own', () => {
    // 1.2 and 1.7 apart, and a third pair 9 apart, where more than 2 is left.
    const near = [rectangle(0, 0, 10, 8), rectangle(30, 0, 40, 8), rectangle(60, 0, 70, 8)];
    const far = [rectangle(11.2, 0, 20, 8), rectangle(41.7, 0, 50, 8), rectangle(79, 0, 90, 8)];
    const found = webs(face(1, [1.4, ...near]), face(1, [1.3, ...far]), 2);
    const left = (gap: number) => 4 - Math.sqrt(2.7 * 2.7 - gap * gap);
    expect(found.map(({ web }) => web)).toEqual([expect.closeTo(left(1.2), 6), expect.closeTo(left(1.7), 6)]);
    expect(found.map(({ at }) => at.x > 20)).toEqual([false, true]);
    // Beside openings that lie behind each other, too, and where all of one lies in the other there is no way between them.
    const within = webs(
      face(1, [1.4, ...near, rectangle(0, 30, 30, 60)]),
      face(1, [1.3, ...far, rectangle(10, 40, 17, 45)]),
      2,
    );
    expect(within.map(({ web, isBehind }) => [web, isBehind])).toEqual([
      [expect.closeTo(1.3, 9), true],
      [expect.closeTo(left(1.2), 6), false],
      [expect.closeTo(left(1.7), 6), false],
    ]);
  });

  test('thinnest first, whichever stage it is of', () => {
    const shallow = rectangle(0, 0, 10, 8);
    const deep = rectangle(30, 0, 40, 8);
    const far = face(1, [1.2, rectangle(5, 2, 35, 6)]);
    const found = webs(face(1, [1, shallow], [1.5, deep]), far);
    expect(found.map(({ web }) => web)).toEqual([expect.closeTo(1.3, 9), expect.closeTo(1.8, 9)]);
    expect(found.map(({ at }) => at.x > 20)).toEqual([true, false]);
    // Just so thin as is looked for is not thinner.
    expect(webs(face(1, [1.5, deep]), face(1, [1.5, deep]), 1)).toEqual([]);
  });

  test('reported at the larger of two places where openings lie behind each other', () => {
    const near = face(1, [1.2, rectangle(0, 0, 60, 8)]);
    for (const far of [
      [rectangle(2, 1, 5, 4), rectangle(30, 1, 50, 7)],
      [rectangle(30, 1, 50, 7), rectangle(2, 1, 5, 4)],
    ]) {
      expect(webs(near, face(1, [1, ...far]))[0]?.at.x).toBeCloseTo(40, 0);
    }
  });

  test('openings that touch leave what is under that place', () => {
    const [one] = webs(face(1, [1.4, rectangle(0, 0, 10, 8)]), face(1, [1.3, rectangle(10, 0, 20, 8)]));
    expect(one?.web).toBeCloseTo(4 - 2.7, 6);
    expect(one?.at.x).toBeCloseTo(10, 6);
  });
});

describe('(coupon-depth-differs)', () => {
  const planOf = (masking: Masking) => {
    const part = partOf({ outlines: [rectangle(0, 0, 30, 25), rectangle(50, 0, 80, 25)] });
    const asked = askedAt(part, [
      [15, 12, 3],
      [60, 12, 2],
    ]);
    return makePlan({ part, asked, job: plainJob({ masking, levels: 'as-drawn' }) });
  };
  const coupon = (depth: number) => ({
    ...{ before: 3, after: 2.9, minutes: 4, faces: 1 as const, gauge: 0.005 },
    opening: { before: 10, after: 10 + 2 * depth, depth, gauge: 0.02 },
  });

  test('the nearest of several; twice as deep is still about that depth', () => {
    const [reported] = checkCouponDepth(planOf('peel-next'), [coupon(0.3), coupon(1.2), coupon(0.6)]);
    expect(reported?.facts).toEqual({ coupon: 1.2, deepest: 3, times: expect.closeTo(2.5, 9), limit: 2 });
    expect(reported?.place).toEqual({ path: 'process.coupon' });
    expect(checkCouponDepth(planOf('peel-next'), [coupon(1.5)])).toEqual([]);
    expect(checkCouponDepth({ ...planOf('peel-next'), stages: [] }, [coupon(1.5)])).toEqual([]);
  });

  test('masked again each cut is only as deep as its own stage: 2 and 1 mm', () => {
    expect(checkCouponDepth(planOf('re-mask'), [coupon(1.2)])).toEqual([]);
    const [reported] = checkCouponDepth(planOf('re-mask'), [coupon(0.8)]);
    expect(reported?.facts).toMatchObject({ deepest: 2, times: expect.closeTo(2.5, 9) });
  });
});

test('(opening-runs-off-sheet) all that runs off, the longest stretch first', () => {
  const [reported] = checkPart({
    sheet: rectangle(0, 0, 100, 60),
    outlines: [rectangle(0, 10, 25, 30), rectangle(70, 5, 100, 40), rectangle(40, 20, 55, 45)],
    depths: [
      [10, 20, 1],
      [80, 20, 1],
      [45, 30, 1],
    ],
  }).filter(({ code }) => code === 'opening-runs-off-sheet');
  expect(reported?.facts).toEqual({ length: expect.closeTo(55, 9), regions: 2 });
  expect(reported?.place.at).toEqual({ x: 100, y: expect.closeTo(22.5, 9) });
  expect(reported?.place.outline?.map(({ closed, spans }) => [closed, spans.length])).toEqual([
    [false, 1],
    [false, 1],
  ]);
});

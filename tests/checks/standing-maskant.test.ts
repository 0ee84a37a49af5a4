/** Where maskant stands, which stage cuts under its border, and contours that do not close. φ = 0.8: a reach is 0.8 of the cut. */
import { describe, expect, test } from 'vitest';
import { checkMaking } from '#checks/check-making.ts';
import type { Making, MakingPlace } from '#checks/making.ts';
import { makingPlace } from '#checks/making-place.ts';
import { sidesOf } from '#checks/sides.ts';
import {
  deepestUndercutter,
  gaugeOf,
  isOnSheet,
  standingMaskant,
  undercutterAt,
} from '#checks/standing-maskant.ts';
import { loopsArea } from '#geometry/span.ts';
import { SAME_BORDER } from '#geometry/tolerances.ts';
import type { Masking } from '#job/job.ts';
import { makePlan } from '#plan/make-plan.ts';
import { measurePlan } from '#run/measure-plan.ts';
import { circle, rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { checkWhole } from '#support/parts/check-whole.ts';
import { type DrawnFront, kitOf } from '#support/parts/front-of.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

const left = rectangle(0, 0, 10, 8);
const right = rectangle(13.36, 1, 24, 7);

/** All that the functions under test look at. */
const placeOf = (drawn: DrawnFront) => ({ kit: kitOf({ etchFactor: 0.8, ...drawn }) }) as MakingPlace;

describe('the stage that cuts under a place', () => {
  /** 3 mm deep on the left, 1.2 on the right: reaches of 2.4 and 0.96 that meet at x = 12.4. */
  const place = placeOf({
    stages: [
      { level: 3, opening: [left] },
      { level: 1.2, opening: [left, right] },
    ],
  });
  const deep = { level: 3, reach: expect.closeTo(2.4, 12) };
  const shallow = { level: 1.2, reach: expect.closeTo(0.96, 12) };
  const none = { level: 0, reach: 0 };

  test('on a scribe line, that whose line it is', () => {
    expect(undercutterAt(place, { x: 10, y: 3 }, 'line')).toEqual(deep);
    expect(undercutterAt(place, { x: 13.36, y: 3 }, 'line')).toEqual(shallow);
    expect(undercutterAt(place, { x: 10 + 2 * SAME_BORDER, y: 3 }, 'line')).toEqual(none);
    expect(undercutterAt(place, { x: 10 + SAME_BORDER / 2, y: 3 }, 'line')).toEqual(deep);
  });

  test('on the border of the etched surface, that which reaches just so far', () => {
    expect(undercutterAt(place, { x: -2.4, y: 3 }, 'surface')).toEqual(deep);
    expect(undercutterAt(place, { x: 24.96, y: 3 }, 'surface')).toEqual(shallow);
    expect(undercutterAt(place, { x: 10, y: 3 }, 'surface')).toEqual(none);
    expect(undercutterAt(place, { x: 12.4, y: 3 }, 'surface')).toEqual(deep);
  });

  test('along a side of two parts the one that cuts deeper, whichever comes first', () => {
    const border = [
      { kind: 'line', start: { x: 13.36, y: 7 }, end: { x: 13.36, y: 1 } },
      { kind: 'line', start: { x: 10, y: 8 }, end: { x: 10, y: 0 } },
    ] as const;
    const [side] = sidesOf([border]);
    for (const parts of [border, [...border].reverse(), border.slice(1)]) {
      expect(side && deepestUndercutter(place, { ...side, parts }, 'line')).toEqual(deep);
    }
    expect(side && deepestUndercutter(place, { ...side, parts: border.slice(0, 1) }, 'line')).toEqual(
      shallow,
    );
  });

  test('likewise with the deeper one on the right', () => {
    const turned = placeOf({
      stages: [
        { level: 3, opening: [rectangle(13.36, 0, 24, 8)] },
        { level: 1.2, opening: [rectangle(13.36, 0, 24, 8), rectangle(0, 1, 10, 7)] },
      ],
    });
    expect(undercutterAt(turned, { x: 10.96, y: 3 }, 'surface')).toEqual(deep);
    expect(undercutterAt(turned, { x: 10, y: 3 }, 'line')).toEqual(shallow);
  });

  test('a place half the accuracy of a border outside, on every side', () => {
    const off = 2.4 + SAME_BORDER / 2;
    for (const at of [
      { x: -off, y: 3 },
      { x: 4, y: -off },
      { x: 4, y: 8 + off },
    ]) {
      expect(undercutterAt(place, at, 'surface')).toEqual(deep);
    }
    expect(undercutterAt(place, { x: 24 + 0.96 + SAME_BORDER / 2, y: 3 }, 'surface')).toEqual(shallow);
  });

  test('where two lines touch, the deeper one', () => {
    for (const [one, other] of [
      [rectangle(0, 0, 10, 8), rectangle(10, 2, 20, 6)],
      [rectangle(10, 0, 20, 8), rectangle(0, 2, 10, 6)],
    ] as const) {
      const touching = placeOf({
        stages: [
          { level: 3, opening: [one] },
          { level: 1.2, opening: [one, other] },
        ],
      });
      for (const y of [3, 5]) expect(undercutterAt(touching, { x: 10, y }, 'line')).toEqual(deep);
    }
  });

  test('none far from all openings, and none in a front without any', () => {
    expect(undercutterAt(place, { x: 60, y: 3 }, 'line')).toEqual(none);
    expect(undercutterAt(place, { x: 60, y: 3 }, 'surface')).toEqual(none);
    const empty = placeOf({ stages: [{ level: 1, opening: [] }] });
    expect(undercutterAt(empty, { x: 0, y: 0 }, 'line')).toEqual(none);
    expect(undercutterAt(placeOf({ stages: [] }), { x: 0, y: 0 }, 'line')).toEqual(none);
  });

  test('masked again, by what it cuts itself: from 1.2 to 3 mm', () => {
    const remasked = placeOf({
      stages: [
        { level: 3, opening: [rectangle(2, 2, 8, 6)] },
        { level: 1.2, opening: [left] },
      ],
      masking: 're-mask',
    });
    const own = { level: 3, reach: expect.closeTo(0.8 * 1.8, 12) };
    expect(undercutterAt(remasked, { x: 8, y: 3 }, 'line')).toEqual(own);
    expect(undercutterAt(remasked, { x: 10, y: 3 }, 'line')).toEqual(shallow);
  });

  test('depth at the end of the run', () => {
    const measure = gaugeOf(place);
    expect(measure({ x: 5, y: 4 })).toBe(3);
    expect(measure({ x: -1.44, y: 4 })).toBeCloseTo(Math.sqrt(9 - 1.8 ** 2), 9);
    expect(measure({ x: 40, y: 4 })).toBe(0);
  });
});

/** A pocket of 2.5 mm with an island and a shallower pocket of 1 mm, in a sheet of 100 by 60. */
function makingOf(masking: Masking, sheet = rectangle(-20, -20, 80, 40)): Making {
  const part = partOf({
    sheet,
    outlines: [rectangle(0, 0, 30, 20), circle(14, 11, 5), rectangle(45, 0, 70, 20)],
  });
  const job = plainJob({ etchFactor: [[0, 0.8]], edgeDatum: 'deep-foot', levels: 'as-drawn', masking });
  const asked = askedAt(part, [
    [2, 2, 2.5],
    [50, 10, 1],
  ]);
  const plan = makePlan({ part, asked, job });
  const { kit, regions } = measurePlan(plan, job);
  return { plan, job, kit: kit(), reached: regions };
}

describe('maskant that stands to the end of its coat', () => {
  test('one coat: all that is bare at the end is not of it, nor what is off the sheet', () => {
    const { place } = makingPlace(makingOf('peel-next'));
    const [coat, ...more] = standingMaskant(place);
    expect(more).toEqual([]);
    expect(coat?.base).toBe(0);
    expect(coat?.borders).toHaveLength(3);
    // The maskant on the left: holes of 600 and 500 mm², an island of 25 π.
    expect(loopsArea(coat?.borders ?? [])).toBeCloseTo(25 * Math.PI - 600 - 500, 6);
    expect((coat?.sides.length ?? 0) - (coat?.cutSides ?? 0)).toBe(4);
    const standing = [
      [14, 11],
      [37, 10],
      [-10, 30],
    ] as const;
    for (const [x, y] of standing) expect(coat?.isStanding({ x, y })).toBe(true);
    const gone = [
      [3, 3],
      [60, 10],
      [-25, 0],
      [200, 10],
    ] as const;
    for (const [x, y] of gone) expect(coat?.isStanding({ x, y })).toBe(false);
  });

  test('masked again, a coat for each stage, over the floor before it', () => {
    const { place } = makingPlace(makingOf('re-mask'));
    const coats = standingMaskant(place);
    expect(coats.map(({ base }) => base)).toEqual([0, 1]);
    const standsAt = (x: number, y: number) => coats.map(({ isStanding }) => isStanding({ x, y }));
    expect(standsAt(60, 10)).toEqual([false, true]);
    expect(standsAt(3, 3)).toEqual([false, false]);
    expect(standsAt(14, 11)).toEqual([true, true]);
  });

  test('land without end is on the sheet everywhere', () => {
    const at = (sheet: DrawnFront['sheet'], x: number) =>
      isOnSheet(kitOf({ stages: [{ level: 1, opening: [left] }], ...(sheet && { sheet }) }).index, x, 4);
    expect(at(undefined, 500)).toBe(true);
    expect([at([rectangle(-5, -5, 20, 20)], 500), at([rectangle(-5, -5, 20, 20)], 19)]).toEqual([
      false,
      true,
    ]);
  });
});

describe('(contour-not-closed)', () => {
  const reported = (making: Making) =>
    checkWhole(making)
      .filter(({ code }) => code === 'contour-not-closed')
      .map(({ facts, place }) => [facts, place.at]);

  test('where a floor was measured on one', () => {
    const making = makingOf('peel-next');
    expect(reported(making)).toEqual([]);
    const [first, ...others] = [...making.reached];
    if (first === undefined) throw new Error('there are regions');
    const gap = { x: 12, y: 34 };
    const reached = new Map([...others, [first[0], { ...first[1], gap }] as const]);
    expect(reported({ ...making, reached })).toEqual([[{ of: 'floors' }, gap]]);
  });

  test('where the border of the etched surface is one: an opening with a side left out', () => {
    const making = makingOf('peel-next');
    const kit = kitOf({ stages: [{ level: 2.5, opening: [left.slice(0, 3)] }] });
    const found = reported({ ...making, kit });
    expect(found).toHaveLength(1);
    expect(found[0]?.[0]).toEqual({ of: 'floors' });
  });
});

test('a plan without a stage has nothing to check, be the sheet ever so small', () => {
  const making = makingOf('peel-next', rectangle(-20, -20, 80, 40));
  const part = partOf({ sheet: rectangle(0, 0, 1, 0.5), outlines: [] });
  const plan = makePlan({ part, asked: new Map(), job: plainJob() });
  const { groups, regions } = measurePlan(plan, plainJob());
  expect(plan.stages).toEqual([]);
  expect(checkMaking({ ...making, plan, reached: regions }, groups)).toEqual([]);
});

/**
 * Which readings are asked about (M7.4), by hand: planned at 0.025 mm/min in a sheet of 5 mm + 0.3 − 0.1, so that 24 minutes
 * take 0.6 mm and an ungauged sheet is taken as 5.1. A gauge scatters by 0.010 mm: one reading by 0.04 at most, two by 0.057.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { itemAt } from '#geometry/assert.ts';
import type { Reading } from '#run/correct-fit.ts';
import type { RunPlan } from '#run/correct-plan.ts';
import { correctRates } from '#run/correct-rates.ts';
import { type Answered, type Asked, questionReadings } from '#run/question-readings.ts';
import { threeFloors } from '#support/jobs/simulated-run.ts';

const plan: RunPlan = { ...threeFloors('peel-next'), sheet: { thickness: 5, plus: 0.3, minus: 0.1 } };
const tapered: RunPlan = { ...plan, sheet: undefined };

type Special = Partial<Reading> & Partial<Omit<Asked, 'reading'>>;

function depth(
  to: number,
  value: number,
  { unit = 'mm', isConfirmed = false, ...more }: Special = {},
): Asked {
  const reading: Reading = { stage: 0, bare: { from: 0, to }, region: 'R01', kind: 'depth', value, ...more };
  return { reading, unit, isConfirmed };
}
const left = (to: number, value: number, more: Special = {}) =>
  depth(to, value, { kind: 'thickness', ...more });
const sheet = (value: number, more: Special = {}) => left(0, value, { stage: -1, ...more });

function last(asks: readonly Asked[], of = plan): Answered | undefined {
  return questionReadings(of, asks).at(-1);
}
const why = (asks: readonly Asked[], of = plan) => last(asks, of)?.question?.why;
const whys = (before: readonly Asked[], each: readonly Asked[], of = plan) =>
  each.map((ask) => why([...before, ask], of));

describe('what a reading is expected to say', () => {
  test('a depth: the planned rate for the minutes that the floor was bare', () => {
    expect(last([depth(24, 0.63)])).toEqual({
      expected: expect.closeTo(0.6, 9),
      rate: expect.closeTo(0.63 / 24, 9),
      question: undefined,
    });
    expect(last([depth(56, 0.57, { bare: { from: 32, to: 56 } })])).toMatchObject({
      expected: expect.closeTo(0.6, 9),
      rate: expect.closeTo(0.57 / 24, 9),
    });
  });

  test('a thickness: the middle of what the sheet may be, less that', () => {
    expect(last([left(24, 4.45)])).toMatchObject({
      expected: expect.closeTo(4.5, 9),
      rate: expect.closeTo(0.65 / 24, 9),
    });
  });

  test('beside a gauged sheet the median of its readings, of its own region', () => {
    const other = sheet(5.25, { region: 'R02' });
    const three = [sheet(5.17), sheet(5.12), sheet(5.13), other];
    expect(last([...three, left(24, 4.5)])?.expected).toBeCloseTo(5.13 - 0.6, 2);
    expect(last([sheet(5.17), other, sheet(5.12), left(24, 4.5)])?.expected).toBeCloseTo(5.145 - 0.6, 2);
    // What was read later is no gauging of the sheet.
    expect(last([left(8, 4.87), left(24, 4.5)])?.expected).toBeGreaterThan(4.87 - 0.5);
  });

  test('before the first dip the sheet, and no rate; none either of a floor that was not bare yet', () => {
    expect(last([sheet(5.05)])).toEqual({
      expected: expect.closeTo(5.1, 9),
      rate: undefined,
      question: undefined,
    });
    expect(last([left(24, 5.05, { bare: { from: 24, to: 24 } })])?.rate).toBeUndefined();
  });

  test('nothing of a thickness where nothing is known of the sheet', () => {
    expect(last([left(24, 3.1)], tapered)).toEqual({
      expected: undefined,
      rate: undefined,
      question: undefined,
    });
    expect(last([sheet(4.6), left(24, 3.98)], tapered)?.expected).toBeCloseTo(4, 2);
    expect(last([depth(24, 0.6)], tapered)?.expected).toBeCloseTo(0.6, 9);
  });
});

describe('reading-in-question: off the rate', () => {
  test('by more than a quarter of the metal, either way', () => {
    expect(
      whys(
        [],
        [0.445, 0.455, 0.745, 0.755].map((value) => depth(24, value)),
      ),
    ).toEqual(['rate', undefined, undefined, 'rate']);
  });

  test('a depth of more than the sheet is no question of the sheet', () => {
    expect(whys([], [depth(24, 6.1)])).toEqual(['rate']);
  });

  test('of little metal by more than one reading scatters: 0.04 of 0.1 mm', () => {
    expect(
      whys(
        [],
        [0.055, 0.065, 0.135, 0.145].map((value) => depth(4, value)),
      ),
    ).toEqual(['rate', undefined, undefined, 'rate']);
  });

  test('a thickness may be off by half the sheet’s tolerance more, 0.2; where it was gauged by 0.04', () => {
    const values = [4.14, 4.16, 4.3, 4.32, 4.68, 4.7, 4.84, 4.86];
    const thicknesses = values.map((value) => left(24, value));
    expect(whys([], thicknesses).map((each) => each ?? '')).toEqual(['rate', '', '', '', '', '', '', 'rate']);
    const gauged = whys([sheet(5.1)], thicknesses).map((each) => each ?? '');
    expect(gauged).toEqual(['rate', 'rate', 'rate', '', '', 'rate', 'rate', 'rate']);
    // Another region’s sheet is not gauged by it, nor this one by what was left of it later.
    expect(whys([left(8, 4.9)], [left(24, 4.72)])).toEqual([undefined]);
    expect(whys([sheet(5.1, { region: 'R02' })], thicknesses)).toEqual(whys([], thicknesses));
  });
});

describe('reading-in-question: the sheet itself', () => {
  test('by 0.24 from its middle before any reading, by 0.08 from what was read there', () => {
    const asks = [4.85, 4.87, 5.01, 5.03, 5.17, 5.19, 5.33, 5.35].map((value) => sheet(value));
    expect(whys([], asks).map((each) => each ?? '')).toEqual(['sheet', '', '', '', '', '', '', 'sheet']);
    const again = whys([sheet(5.1)], asks).map((each) => each ?? '');
    expect(again).toEqual(['sheet', 'sheet', 'sheet', '', '', 'sheet', 'sheet', 'sheet']);
  });

  test('none is left thicker than the thickest sheet, 5.3, and a gauge’s scatter', () => {
    expect(whys([], [left(1, 5.33), left(1, 5.35)])).toEqual(['rate', 'sheet']);
    expect(whys([sheet(5.1)], [left(24, 5.33), left(24, 5.35)])).toEqual(['rate', 'sheet']);
  });

  test('of a tapered one, not known otherwise, only beside another reading', () => {
    expect(whys([], [sheet(9)], tapered)).toEqual([undefined]);
    expect(whys([sheet(4.6)], [sheet(4.67), sheet(4.69), sheet(4.5)], tapered)).toEqual([
      undefined,
      'sheet',
      'sheet',
    ]);
  });
});

describe('reading-in-question: beside what the floor read before', () => {
  test('at the same moment: by a tenth of the metal, and no less than two readings scatter', () => {
    const deep = depth(80, 2, { bare: { from: 0, to: 80 } });
    expect(
      whys(
        [deep],
        [1.79, 1.81, 2.19, 2.21].map((value) => depth(80, value)),
      ),
    ).toEqual(['repeat', undefined, undefined, 'repeat']);
    expect(
      whys(
        [depth(4, 0.125)],
        [0.065, 0.075].map((value) => depth(4, value)),
      ),
    ).toEqual(['repeat', undefined]);
    expect(
      whys(
        [left(24, 4.5)],
        [4.43, 4.45, 4.55, 4.57].map((value) => left(24, value)),
      ),
    ).toEqual(['repeat', undefined, undefined, 'repeat']);
  });

  test('of several at that moment their median counts', () => {
    const before = [0.6, 0.55, 0.58].map((value) => depth(24, value));
    expect(
      whys(
        before,
        [0.51, 0.53, 0.63, 0.65].map((value) => depth(24, value)),
      ),
    ).toEqual(['repeat', undefined, undefined, 'repeat']);
  });

  test('another region, another kind of reading and another spell of the floor are not the same floor', () => {
    const before = [depth(24, 0.66)];
    expect(
      whys(before, [
        depth(24, 0.47, { region: 'R02' }),
        left(24, 4.4),
        depth(24, 0.48, { bare: { from: 5, to: 24 } }),
        depth(24, 0.47),
      ]),
    ).toEqual([undefined, undefined, undefined, 'repeat']);
  });

  test('the gauged sheet is no reading of the floor', () => {
    expect(whys([sheet(5.1)], [left(4, 4.9)])).toEqual(['rate']);
  });

  test('later: less gone than before by more than two readings scatter', () => {
    const before = [depth(24, 0.6)];
    expect(whys(before, [depth(32, 0.54), depth(32, 0.55), depth(32, 0.7)])).toEqual([
      'rose',
      'rate',
      undefined,
    ]);
    const thick = [sheet(5.1), left(24, 4.5)];
    expect(whys(thick, [left(32, 4.56), left(32, 4.55), left(32, 4.4)])).toEqual(['rose', 'rate', undefined]);
  });

  test('later: more gone since than 1.25 times what the minutes take, and two readings’ scatter', () => {
    // 8 min: 0.2 mm, so 0.25 + 0.057.
    expect(whys([depth(24, 0.6)], [depth(32, 0.9), depth(32, 0.91)])).toEqual([undefined, 'too-deep']);
    expect(whys([sheet(5.1), left(24, 4.5)], [left(32, 4.2), left(32, 4.18)])).toEqual([
      undefined,
      'too-deep',
    ]);
  });

  test('the last moment of several counts', () => {
    const before = [depth(24, 0.6), depth(32, 0.8)];
    expect(whys(before, [depth(40, 0.73), depth(40, 0.95)])).toEqual(['rose', undefined]);
  });
});

describe('what is reported of a reading in question', () => {
  test('what was read and expected, and both rates', () => {
    expect(last([depth(24, 0.9)])?.question).toEqual({
      why: 'rate',
      read: 0.9,
      expected: expect.closeTo(0.6, 9),
      rate: { read: expect.closeTo(0.0375, 9), expected: expect.closeTo(0.025, 9) },
      inOtherUnit: undefined,
    });
    expect(last([left(60, 3.2, { bare: { from: 36, to: 60 } })])?.question?.rate).toEqual({
      read: expect.closeTo(1.9 / 24, 9),
      expected: expect.closeTo(0.025, 9),
    });
    expect(last([sheet(5.6)])?.question?.rate).toBeUndefined();
  });

  test('and what it would be in the other unit, where that fits', () => {
    expect(last([depth(24, 0.0236)])?.question?.inOtherUnit).toEqual({
      unit: 'in',
      value: expect.closeTo(0.59944, 9),
    });
    expect(last([left(24, 4.5 * 25.4, { unit: 'in' })])?.question?.inOtherUnit).toEqual({
      unit: 'mm',
      value: expect.closeTo(4.5, 9),
    });
    expect(last([depth(24, 0.0236, { unit: 'in' })])?.question?.inOtherUnit).toBeUndefined();
    expect(last([depth(24, 0.6 * 25.4)])?.question?.inOtherUnit).toBeUndefined();
  });
});

describe('which readings say something of those after them', () => {
  test('at one moment none does, at the next all that count', () => {
    const [, second, third] = questionReadings(plan, [depth(24, 0.66), depth(24, 0.64), depth(48, 1.3)]);
    expect(second?.expected).toBeCloseTo(0.6, 9);
    // 0.65 mm in 24 minutes, gone on with.
    expect(third?.expected).toBeCloseTo(1.3, 2);
  });

  test('a stage that begins at the minute of the last reading is a moment of its own', () => {
    const next = depth(24, 0.66, { stage: 1, region: 'R02' });
    expect(last([depth(24, 0.66), next])?.expected).toBeCloseTo(0.66, 2);
  });

  test('one that is asked about does not, until it is confirmed: then at once', () => {
    expect(last([depth(24, 0.9), depth(24, 0.9)])?.question?.why).toBe('rate');
    expect(last([depth(24, 0.9), depth(48, 1.2)])?.expected).toBeCloseTo(1.2, 9);
    const confirmed = depth(24, 0.9, { isConfirmed: true });
    const [first, again, later] = questionReadings(plan, [confirmed, depth(24, 0.91), depth(48, 1.8)]);
    expect(first?.question?.why).toBe('rate');
    expect(again?.expected).toBeCloseTo(0.9, 2);
    expect([again?.question, later?.question]).toEqual([undefined, undefined]);
    expect(later?.expected).toBeCloseTo(1.8, 1);
  });

  test('one that is confirmed without being asked about counts as any other', () => {
    const [, second] = questionReadings(plan, [depth(24, 0.66, { isConfirmed: true }), depth(24, 0.64)]);
    expect(second?.expected).toBeCloseTo(0.6, 9);
  });
});

describe('readings of one floor at one moment, in whatever order they came', () => {
  const whysOf = (asks: readonly Asked[], of = plan) =>
    questionReadings(of, asks).map(({ question }) => question?.why ?? '');
  const orders = (values: readonly number[]) =>
    values.map((_, turn) => [...values.slice(turn), ...values.slice(0, turn)]);

  test('the one of three that stands apart is asked about, though it came first', () => {
    for (const values of orders([4.38, 4.5, 4.51])) {
      expect(whysOf(values.map((value) => left(24, value)))).toEqual(
        values.map((value) => (value === 4.38 ? 'repeat' : '')),
      );
    }
    // What it is held against is the middle of those that fit: 4.5, 4.51 and itself.
    const [odd] = questionReadings(plan, [left(24, 4.38), left(24, 4.5), left(24, 4.51)]);
    expect(odd?.question).toMatchObject({ read: 4.38, expected: 4.5 });
    expect(odd?.expected).toBeCloseTo(4.5, 9);
  });

  test('of two the one nearer to what was expected counts, and both are asked about where that does not tell', () => {
    expect(whysOf([depth(24, 0.69), depth(24, 0.61)])).toEqual(['repeat', '']);
    expect(whysOf([depth(24, 0.57), depth(24, 0.65)])).toEqual(['', 'repeat']);
    expect(whysOf([depth(24, 0.56), depth(24, 0.64)])).toEqual(['repeat', 'repeat']);
    // Of a tapered sheet nothing is expected.
    expect(whysOf([sheet(4.6), sheet(4.69)], tapered)).toEqual(['sheet', 'sheet']);
  });

  test('wild figures say nothing of the others: two of them are no majority', () => {
    expect(whysOf([left(24, 3.1), left(24, 3.12), left(24, 4.51)])).toEqual(['rate', 'rate', '']);
  });

  test('one that is confirmed decides between two halves; a majority against it still counts', () => {
    const sure = depth(24, 0.7, { isConfirmed: true });
    expect(whysOf([depth(24, 0.61), sure])).toEqual(['repeat', 'repeat']);
    expect(whysOf([depth(24, 0.61), sure, depth(24, 0.6)])).toEqual(['', 'repeat', '']);
    expect(whysOf([depth(24, 0.69), sure])).toEqual(['', '']);
  });

  const scale = fc.integer({ min: 400, max: 800 });
  const asked = fc.record({
    value: scale,
    to: fc.constantFrom(21, 24),
    region: fc.constantFrom('R01', 'R02'),
    kind: fc.constantFrom('depth' as const, 'thickness' as const),
    isConfirmed: fc.boolean(),
  });
  const placed = fc
    .array(asked, { minLength: 2, maxLength: 9 })
    .chain((asks) =>
      fc.tuple(fc.constant(asks), fc.shuffledSubarray([...asks.keys()], { minLength: asks.length })),
    );

  test('M7.4 any order of the same readings gives the same questions and the same minutes', {
    tags: ['long'],
  }, () => {
    fc.assert(
      fc.property(placed, ([asks, order]) => {
        const readings = asks.map(({ value, to, ...more }) =>
          depth(to, more.kind === 'depth' ? value / 1000 + 0.00037 : 5.1 - value / 1000 + 0.00037, more),
        );
        const shuffled = order.map((place) => itemAt(readings, place));
        const inOrder = questionReadings(plan, readings);
        const answers = questionReadings(plan, shuffled);
        const soFar = { had: [24, 0, 0], current: 0 };
        const minutes = (of: readonly Asked[], all: readonly Answered[]) =>
          correctRates(
            plan,
            of.flatMap(({ reading, isConfirmed }, at) =>
              isConfirmed || itemAt(all, at).question === undefined ? [reading] : [],
            ),
            soFar,
          ).stages.map((stage) => stage.left.value);
        for (const [at, place] of order.entries()) {
          expect(itemAt(answers, at).question?.why).toBe(itemAt(inOrder, place).question?.why);
        }
        const ordered = minutes(readings, inOrder);
        for (const [at, each] of minutes(shuffled, answers).entries()) {
          expect(each).toBeCloseTo(itemAt(ordered, at), 6);
        }
      }),
    );
  });
});

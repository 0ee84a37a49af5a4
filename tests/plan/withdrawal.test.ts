import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Taper } from '#job/taper.ts';
import { taperedAt } from '#job/tapered-at.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { taperProfile } from '#plan/taper-profile.ts';
import { planWithdrawal, type Withdrawal } from '#plan/withdrawal.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { partOf } from '#support/parts/part-of.ts';

const RATE = 0.025;
const ANY_HOIST = { slowest: 0.001, fastest: 1e6 };

const alongX = (fromX: number, toX: number, fromValue: number, toValue: number): Taper => ({
  from: { x: fromX, y: 0 },
  to: { x: toX, y: 0 },
  fromValue,
  toValue,
});

function programOf(tapers: readonly Taper[], length: number, hoist = ANY_HOIST): Withdrawal | undefined {
  const profile = taperProfile(tapers, [rectangle(0, 0, length, 50)]);
  return profile && planWithdrawal(profile, { rate: RATE, hoist });
}

/**
 * What the table makes, by small steps of time: the etch bites while a place is below the waterline. Knows the table alone.
 * Depths at evenly spaced places from the shallow end.
 */
function integrated({ rows, minutes }: Withdrawal, places: readonly number[]): number[] {
  const depths = places.map(() => 0);
  const STEP = minutes / 400_000;
  let row = 0;
  let waterline = rows[0]?.waterline ?? 0;
  let next = 0;
  for (let minute = 0; minute < minutes; minute += STEP) {
    while ((rows[row + 1]?.minute ?? Number.POSITIVE_INFINITY) <= minute) row++;
    waterline += (rows[row]?.speed ?? 0) * STEP;
    for (let place = places[next]; place !== undefined && place < waterline; place = places[++next]) {
      depths[next] = RATE * minute;
    }
  }
  for (; next < places.length; next++) depths[next] = RATE * minutes;
  return depths;
}

/** Worst deviation at places 10 mm apart, drawn out as near to the speed wanted as the hoist goes, from a place and a minute. */
function worstFrom(
  { first, wait }: { first: number; wait: number },
  given: {
    asked: readonly number[];
    slope: { from: number; to: number; wanted: number };
    hoist: { slowest: number; fastest: number };
  },
): number {
  const { asked, slope, hoist } = given;
  const onSlope = Math.min(hoist.fastest, Math.max(hoist.slowest, slope.wanted));
  // What hangs out just above the start is off by all that is asked there.
  let worst = first > 0 ? (asked[first] ?? 0) : 0;
  let minute = wait;
  for (const [place, depth] of asked.entries()) {
    const before = 10 * (place - 1);
    const speed = before >= slope.from && before < slope.to ? onSlope : hoist.fastest;
    if (place > first) minute += 10 / speed;
    worst = Math.max(worst, Math.abs((place < first ? 0 : RATE * minute) - depth));
  }
  return worst;
}

describe('M4.6 drawing the part out of the bath', () => {
  test('0 to 2.0 mm over 1000 mm at 0.025 mm/min: 12.5 mm/min for 80 min, slope 0.1146°', () => {
    // Worked example: speed = rate × length / depth change (US patent 3,210,226 as practice; formula derived).
    const program = programOf([alongX(0, 1000, 0, 2)], 1000);
    expect(program?.minutes).toBeCloseTo(80, 9);
    const speeds = program?.rows.slice(0, -1).map(({ speed }) => speed) ?? [];
    expect(speeds.length).toBeGreaterThan(3);
    for (const speed of speeds) expect(speed).toBeCloseTo(12.5, 9);
    expect((Math.atan(2 / 1000) * 180) / Math.PI).toBeCloseTo(0.1146, 4);
    expect(program?.worstDeviation).toBeCloseTo(0, 9);
    expect(program?.down).toEqual({ x: 1, y: 0 });
  });

  test('the table, integrated numerically, gives the asked profile within 1 µm', () => {
    const program = programOf([alongX(1000, 0, 0.6, 2.4)], 1000);
    const places = Array.from({ length: 101 }, (_, step) => step * 10);
    if (program === undefined) throw new Error('the taper grows one way');
    for (const [index, depth] of integrated(program, places).entries()) {
      expect(Math.abs(depth - (0.6 + (1.8 * index) / 100))).toBeLessThan(1e-3);
    }
    // The part hangs the other way round here.
    expect(program.down).toEqual({ x: -1, y: 0 });
  });

  test('so it does for two tapers of sheet and skin that bend the slope on the way (random)', () => {
    const taper = fc.record({
      from: fc.integer({ min: 0, max: 400 }),
      rise: fc.integer({ min: 20, max: 150 }),
    });
    fc.assert(
      fc.property(taper, taper, fc.integer({ min: 0, max: 80 }), (first, second, base) => {
        // One taper runs all the way, so that depth grows everywhere; two more bend it.
        const tapers = [
          alongX(0, 1000, base / 100, base / 100 + 0.4),
          alongX(first.from, first.from + 500, 0, first.rise / 100),
          alongX(second.from, second.from + 300, 0, second.rise / 100),
        ];
        const program = programOf(tapers, 1000);
        if (program === undefined) throw new Error('the taper grows one way');
        const places = Array.from({ length: 51 }, (_, step) => step * 20);
        for (const [index, depth] of integrated(program, places).entries()) {
          const asked = taperedAt(tapers, { x: places[index] ?? 0, y: 0 });
          expect(Math.abs(depth - asked)).toBeLessThan(1e-3);
        }
      }),
      { numRuns: 10 },
    );
  });

  test('a hoist that is too fast even at its slowest: as far too deep at one end as too shallow at the other', () => {
    // Wanted 12.5 mm/min, done 20: 50 min in place of 80, 0.75 mm lost in all, half of it on either side.
    const program = programOf([alongX(0, 1000, 1, 3)], 1000, { slowest: 20, fastest: 500 });
    expect(program?.missed).toEqual([{ from: 0, to: 1000, wanted: 12.5, given: 20 }]);
    expect(program?.worstDeviation).toBeCloseTo(0.375, 9);
    const places = [0, 250, 500, 750, 1000];
    const made = program === undefined ? [] : integrated(program, places);
    const worst = Math.max(...made.map((depth, index) => Math.abs(depth - (1 + index / 2))));
    expect(worst).toBeCloseTo(0.375, 3);
  });

  test('even ends at depth 0 and 2.0 mm: let in to where depth begins, ± 0.031 mm in place of 0.125', () => {
    // By hand: 500 mm at 200 mm/min lose 2.5 min, 0.0625 mm, at the deep end; half of it either way. 0.03125 mm is asked
    // 15.625 mm into the slope, and what hangs out there is that much too shallow.
    const tapers = [alongX(500, 1500, 0, 2)];
    const program = programOf(tapers, 2000, { slowest: 1, fastest: 200 });
    if (program === undefined) throw new Error('the taper grows one way');
    expect(program.worstDeviation).toBeCloseTo(0.03125, 6);
    expect(program.rows[0]).toEqual({ minute: 0, waterline: expect.closeTo(515.625, 3), speed: 12.5 });
    expect(program.missed).toEqual([{ from: 1500, to: 2000, wanted: Number.POSITIVE_INFINITY, given: 200 }]);
    const places = Array.from({ length: 401 }, (_, step) => step * 5);
    const off = integrated(program, places).map((depth, i) => depth - taperedAt(tapers, { x: 5 * i, y: 0 }));
    expect(Math.max(...off)).toBeCloseTo(0.03125, 3);
    expect(Math.min(...off)).toBeGreaterThan(-0.03126);
  });

  test('no start comes before minute 0: a place farther in starts later in its stead', () => {
    // By hand: 190 mm of even floor at 42 mm/min take 0.025 × 190 / 42 mm too much. Half of it either way would have to start
    // 1.8 min too soon at the dry end; where 0.05655 mm is asked, 0.05655 / 0.0075 mm into the first slope, it does not.
    const tapers = [alongX(420, 1000, 0, 2), alongX(150, 230, 0, 0.6)];
    const program = programOf(tapers, 1000, { slowest: 4, fastest: 42 });
    const half = (RATE * 190) / 42 / 2;
    expect(program?.worstDeviation).toBeCloseTo(half, 6);
    expect(program?.rows[0]).toEqual({
      minute: 0,
      waterline: expect.closeTo(150 + half / 0.0075, 3),
      speed: 0,
    });
    expect(program?.rows[1]?.minute).toBeGreaterThan(3);
  });

  test('an even end at depth 0 alone is left out of the bath, and the rest comes out as asked', () => {
    const tapers = [alongX(500, 1500, 0, 2)];
    const program = programOf(tapers, 1500, { slowest: 1, fastest: 200 });
    if (program === undefined) throw new Error('the taper grows one way');
    expect(program.worstDeviation).toBeCloseTo(0, 6);
    expect(program.missed).toEqual([]);
    const places = Array.from({ length: 301 }, (_, step) => step * 5);
    for (const [i, depth] of integrated(program, places).entries()) {
      expect(Math.abs(depth - taperedAt(tapers, { x: 5 * i, y: 0 }))).toBeLessThan(1e-3);
    }
  });

  test('no other start does better: tried from every place and minute (random)', () => {
    const cases = fc.record({
      base: fc.integer({ min: 0, max: 30 }),
      lead: fc.integer({ min: 0, max: 60 }).map((tens) => tens * 10),
      length: fc.integer({ min: 20, max: 90 }).map((tens) => tens * 10),
      hoist: fc.constantFrom({ slowest: 1, fastest: 200 }, { slowest: 15, fastest: 60 }),
    });
    fc.assert(
      fc.property(cases, ({ base, lead, length, hoist }) => {
        const tapers = [alongX(lead, lead + length, base / 100, base / 100 + 1.5)];
        const program = programOf(tapers, 2000, hoist);
        if (program === undefined) throw new Error('the taper grows one way');
        const slope = { from: lead, to: lead + length, wanted: (RATE * length) / 1.5 };
        const asked = Array.from({ length: 201 }, (_, step) => taperedAt(tapers, { x: step * 10, y: 0 }));
        for (let first = 0; first < asked.length; first += 4) {
          for (let wait = 0; wait < 40; wait += 1) {
            const worst = worstFrom({ first, wait }, { asked, slope, hoist });
            expect(worst).toBeGreaterThan(program.worstDeviation - 1e-6);
          }
        }
      }),
      { numRuns: 4 },
    );
  });

  test('depth that grows and falls again can’t be drawn out', () => {
    expect(programOf([alongX(0, 500, 1, 2), alongX(500, 1000, 0, -0.5)], 1000)).toBeUndefined();
  });
});

function plannedWith(hoist: { slowest: number; fastest: number }, tapers: readonly Taper[]): EtchPlan {
  const part = partOf({ outlines: [rectangle(0, 0, 1000, 100)] });
  const region = part.regions.find(({ loops }) => isInsideLoops(loops, { x: 500, y: 50 }));
  const asked = new Map([[region?.id ?? '', { depth: 1.8, plus: 0.08, minus: 0.08, tapers }]]);
  const job = plainJob({ levels: 'fewest' });
  return makePlan({ part, asked, job: { ...job, process: { ...job.process, hoist } } });
}

describe('beside the steps', () => {
  test('a taper of 2.4 to 1.2 mm: 96 min and no deviation, against 8 stages, 93 min and 0.075 mm', () => {
    const plan = plannedWith(ANY_HOIST, [alongX(0, 1000, 2.4, 1.2)]);
    expect(plan.findings).toEqual([]);
    const [choice] = plan.withdrawals ?? [];
    expect(choice?.minutes).toBeCloseTo(96, 6);
    expect(choice?.worstDeviation).toBeCloseTo(0, 9);
    expect(choice?.steps?.stages).toBe(8);
    expect(choice?.steps?.minutes).toBeCloseTo(2.325 / RATE, 3);
    expect(choice?.steps?.worstDeviation).toBeCloseTo(0.075, 5);
  });

  test('hoist-cannot-follow is a note: the hoist does 25 mm/min at its slowest, 20.8 are wanted', () => {
    const { findings } = plannedWith({ slowest: 25, fastest: 500 }, [alongX(0, 1000, 2.4, 1.2)]);
    expect(findings.map(({ code, severity }) => [severity, code])).toEqual([['note', 'hoist-cannot-follow']]);
  });

  test('withdrawal-not-one-way is a note: depth rises and falls', () => {
    const tapers = [alongX(0, 500, 1.4, 2), alongX(500, 1000, 0, -0.5)];
    const { findings, withdrawals } = plannedWith(ANY_HOIST, tapers);
    expect(findings.map(({ code }) => code)).toEqual(['withdrawal-not-one-way']);
    expect(withdrawals).toBeUndefined();
  });

  test('without a hoist nothing is said of it', () => {
    const part = partOf({ outlines: [rectangle(0, 0, 1000, 100)] });
    const plan = makePlan({ part, asked: new Map(), job: plainJob() });
    expect(plan.withdrawals).toBeUndefined();
  });
});

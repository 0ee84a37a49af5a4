/** M4.7 both ways of masking side by side, from levels alone. Levels 1.1, 1.9 and 3.0; etch factor 0.8. */
import { describe, expect, test } from 'vitest';
import { arrange } from '#geometry/arrangement/arrange.ts';
import { compareMaskings } from '#plan/compare-maskings.ts';
import type { DepthBand } from '#plan/fewest-levels.ts';
import { rectangle, sourced } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';

/** Land 60 × 30, a floor of 1.1 with one of 3.0 in it, and one of 1.9 on its own. */
const { arrangement } = arrange(
  sourced([
    rectangle(0, 0, 60, 30),
    rectangle(5, 5, 30, 25),
    rectangle(10, 10, 20, 17),
    rectangle(40, 5, 52, 20),
  ]),
  { joinTolerance: 0.01 },
);
const levels = Float64Array.from(arrangement.faces, ({ area }) => {
  const level = new Map([
    [70, 3],
    [430, 1.1],
    [180, 1.9],
  ]).get(area);
  return area === 0 ? -1 : (level ?? 0);
});
const flat = (depth: number, minus: number, plus: number): DepthBand => ({
  low: depth,
  high: depth,
  minus,
  plus,
});
const { process } = plainJob({ etchFactor: [[0, 0.8]] });
const compare = (bands: readonly DepthBand[]) =>
  compareMaskings({
    sides: [{ arrangement, levels }],
    bands: new Map(bands.map((band, number) => [`R${number + 1}`, band])),
    process,
  });

describe('M4.7 one coat for the run beside a new coat for each stage', () => {
  const both = () => compare([flat(1.1, 0.1, 0.1)]);

  test('the same stages and minutes; one coat or three', () => {
    const [peelNext, reMask] = both();
    expect(peelNext).toMatchObject({ masking: 'peel-next', stages: 3, coats: 1 });
    expect(reMask).toMatchObject({ masking: 're-mask', stages: 3, coats: 3 });
    expect([peelNext?.minutes, reMask?.minutes]).toEqual([expect.closeTo(120, 9), expect.closeTo(120, 9)]);
  });

  test('walls go by the floors that touch, deepest first', () => {
    const [peelNext, reMask] = both();
    const pairs = peelNext?.walls.map(({ level, beside }) => [level, beside]);
    expect(pairs).toEqual([
      [3, 1.1],
      [1.9, 0],
      [1.1, 0],
    ]);
    expect(reMask?.walls.map(({ level, beside }) => [level, beside])).toEqual(pairs);
  });

  test('one coat: a wall is as round as its level is deep, its allowance φ √(ℓ² − d²)', () => {
    const [peelNext] = both();
    expect(peelNext?.walls.map(({ fillet }) => fillet)).toEqual([3, 1.9, 1.1]);
    expect(peelNext?.walls.map((wall) => wall.allowance)).toEqual(
      [0.8 * Math.sqrt(9 - 1.21), 0.8 * 1.9, 0.8 * 1.1].map((each) => expect.closeTo(each, 12)),
    );
  });

  test('a new coat for each stage: as round as its own stage etches', () => {
    const [, reMask] = both();
    const fillets = [3 - 1.9, 1.9 - 1.1, 1.1].map((each) => expect.closeTo(each, 12));
    expect(reMask?.walls.map(({ fillet }) => fillet)).toEqual(fillets);
  });

  test('maskant stands out by the deepest cut made beside it', () => {
    const [peelNext, reMask] = both();
    // One coat: 1.9 from land down, and 3.0 − 1.1, of which the first with the deepest step is 1.9. A new coat for each stage: 1.1.
    expect(peelNext?.overhang).toBeCloseTo(0.8 * 1.9, 12);
    expect(reMask?.overhang).toBeCloseTo(0.8 * 1.1, 12);
  });
});

describe('M4.7 what levels leave to be desired', () => {
  test('is the worst share of its own tolerance, too deep by plus or too shallow by minus', () => {
    // 1.9 for 1.85 asked: 0.05 of + 0.2; 3.0 for 3.06: 0.06 of − 0.1.
    const [way] = compare([flat(1.85, 0.04, 0.2), flat(3.06, 0.1, 0.02)]);
    expect(way?.worstShare).toBeCloseTo(0.6, 9);
    expect(way?.worstDeviation).toBeCloseTo(0.06, 9);
  });

  test('share and deviation are each the worst of all, not of one region', () => {
    const [way] = compare([flat(1.88, 0.01, 0.04), flat(2.9, 0.5, 0.5)]);
    expect(way?.worstShare).toBeCloseTo(0.5, 9);
    expect(way?.worstDeviation).toBeCloseTo(0.1, 9);
  });

  test('a taper from 0.3 up may run out to land: 0 serves what is less than 0.55', () => {
    // Between 0 and 1.1 with − 0.6 and + 0.6 the worst is 0.55: its share 0.55 / 0.6. From 1.1 alone it were 0.8.
    const [way] = compare([{ low: 0.3, high: 1.1, minus: 0.6, plus: 0.6 }]);
    expect(way?.worstShare).toBeCloseTo(0.55 / 0.6, 6);
    expect(way?.worstDeviation).toBeCloseTo(0.55, 6);
  });

  test('a flat floor may not: what asks for 0.3 gets 1.1', () => {
    const [way] = compare([flat(0.3, 0.6, 0.9)]);
    expect(way?.worstDeviation).toBeCloseTo(0.8, 9);
    expect(way?.worstShare).toBeCloseTo(0.8 / 0.9, 9);
  });
});

test('one level, or none, leaves nothing to compare', () => {
  const bands = new Map([['R1', flat(3, 0.1, 0.1)]]);
  const only = levels.map((level) => (level === 3 ? 3 : Math.min(level, 0)));
  expect(compareMaskings({ sides: [{ arrangement, levels: only }], bands, process })).toEqual([]);
  const none = levels.map((level) => Math.min(level, 0));
  expect(compareMaskings({ sides: [{ arrangement, levels: none }], bands, process })).toEqual([]);
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bandShare, bestLevels, type DepthBand, fewestLevels } from '#plan/fewest-levels.ts';

/** Depths and tolerances in steps of 0.01 mm, as drawings give them. */
const hundredths = (min: number, max: number) => fc.integer({ min, max }).map((steps) => steps / 100);
const flat = fc
  .record({ depth: hundredths(20, 200), minus: hundredths(1, 25), plus: hundredths(1, 25) })
  .map(({ depth, minus, plus }): DepthBand => ({ low: depth, high: depth, minus, plus }));

/** Worst share of tolerance when each depth takes the best level of a set. */
function worstShare(bands: readonly DepthBand[], levels: readonly number[]): number {
  const shares = bands.map(({ low, minus, plus }) =>
    Math.min(...levels.map((level) => (level > low ? (level - low) / plus : (low - level) / minus))),
  );
  return Math.max(0, ...shares);
}

/** Least worst share that one level can give a group: the best of all pairs' balance points; no bisection, no piercing. */
function groupShare(group: readonly DepthBand[]): number {
  let worst = 0;
  for (const shallow of group) {
    for (const deep of group) {
      // One level between two depths: (ℓ − shallow) / plus = (deep − ℓ) / minus at the balance.
      if (deep.low > shallow.low)
        worst = Math.max(worst, (deep.low - shallow.low) / (shallow.plus + deep.minus));
    }
  }
  return worst;
}

/** Every way to sort the bands into groups of one level each (set partitions), the fewest groups first, then the least share. */
function exhaustive(bands: readonly DepthBand[]): { count: number; share: number } {
  let best = { count: Number.POSITIVE_INFINITY, share: Number.POSITIVE_INFINITY };
  const place = (index: number, groups: readonly (readonly DepthBand[])[]): void => {
    const band = bands[index];
    if (band === undefined) {
      const share = Math.max(0, ...groups.map(groupShare));
      const isBetter = groups.length < best.count || (groups.length === best.count && share < best.share);
      if (share <= 1 + 1e-9 && isBetter) best = { count: groups.length, share };
      return;
    }
    if (groups.length > best.count) return;
    groups.forEach((group, at) => {
      place(index + 1, groups.with(at, [...group, band]));
    });
    place(index + 1, [...groups, [band]]);
  };
  place(0, []);
  return best;
}

describe('M4.1, M4.2 fewest levels', () => {
  test('as few as an exhaustive search of 500 random small parts finds, and no worse a share of tolerance', () => {
    fc.assert(
      fc.property(fc.array(flat, { minLength: 1, maxLength: 7 }), (bands) => {
        const found = fewestLevels(bands);
        const best = exhaustive(bands);
        expect(found?.levels).toHaveLength(best.count);
        expect(found?.worstShare).toBeCloseTo(best.share, 6);
        // The levels themselves hold the share, not only the figure that is reported.
        expect(worstShare(bands, found?.levels ?? [])).toBeLessThanOrEqual(best.share + 1e-6);
      }),
      { numRuns: 500 },
    );
  });

  test('four depths of a hatch, two of them within each other’s tolerance: three levels, aimed at the middle', () => {
    const bands = [2.4, 2.3, 1.6, 0.8].map((depth) => ({ low: depth, high: depth, minus: 0.08, plus: 0.08 }));
    const found = fewestLevels(bands);
    expect(found?.levels.map((level) => level.toFixed(4))).toEqual(['0.8000', '1.6000', '2.3500']);
    expect(found?.worstShare).toBeCloseTo(0.05 / 0.08, 6);
  });

  test('locked levels stay, and only what they leave unserved gets levels of its own', () => {
    fc.assert(
      fc.property(
        fc.array(flat, { minLength: 1, maxLength: 6 }),
        fc.uniqueArray(hundredths(20, 200), { minLength: 1, maxLength: 2 }),
        (bands, locked) => {
          const found = fewestLevels(bands, locked);
          const unserved = bands.filter((band) => worstShare([band], locked) > 1 + 1e-9);
          const more = unserved.length === 0 ? 0 : exhaustive(unserved).count;
          for (const level of locked) expect(found?.levels).toContain(level);
          expect(found?.levels).toHaveLength(locked.length + more);
          expect(worstShare(bands, found?.levels ?? [])).toBeLessThanOrEqual(1 + 1e-6);
        },
      ),
      { numRuns: 500 },
    );
  });

  test('a level more never costs tolerance, and one fewer than the fewest always costs more than there is', () => {
    fc.assert(
      fc.property(fc.array(flat, { minLength: 2, maxLength: 7 }), (bands) => {
        const count = fewestLevels(bands)?.levels.length ?? 0;
        const shareWith = (levels: number) =>
          bestLevels(bands, { count: levels })?.worstShare ?? Number.POSITIVE_INFINITY;
        expect(shareWith(count)).toBeLessThanOrEqual(1);
        expect(shareWith(count + 1)).toBeLessThanOrEqual(shareWith(count) + 1e-9);
        if (count > 1) expect(shareWith(count - 1)).toBeGreaterThan(1);
      }),
      { numRuns: 200 },
    );
  });
});

describe('M4.4 levels for tapers', () => {
  test('a taper of 1.2 mm with ± 0.08 needs 8 levels: 1.2 / 0.16 = 7.5', () => {
    const found = fewestLevels([{ low: 1.2, high: 2.4, minus: 0.08, plus: 0.08 }]);
    expect(found?.levels).toHaveLength(8);
    // Eight bands as even as can be: 1.2 / 8 = 0.15 each, half of it on either side.
    expect(found?.worstShare).toBeCloseTo(0.075 / 0.08, 6);
  });

  test('as many levels as the same taper sampled finely, beside flat floors', { tags: ['long'] }, () => {
    const taper = fc
      .record({
        low: hundredths(30, 150),
        rise: hundredths(1, 120),
        minus: hundredths(2, 25),
        plus: hundredths(2, 25),
      })
      .map(({ low, rise, ...tolerance }) => ({ low, high: low + rise, ...tolerance }));
    fc.assert(
      fc.property(fc.array(flat, { maxLength: 4 }), taper, (bands, band) => {
        const sampled = Array.from({ length: 2001 }, (_, step) => {
          const depth = band.low + ((band.high - band.low) * step) / 2000;
          return { ...band, low: depth, high: depth };
        });
        const found = fewestLevels([...bands, band]);
        const finely = fewestLevels([...bands, ...sampled]);
        expect(found?.levels).toHaveLength(finely?.levels.length ?? 0);
        expect(worstShare([...bands, ...sampled], found?.levels ?? [])).toBeLessThanOrEqual(1 + 1e-6);
      }),
      { numRuns: 60 },
    );
  });

  test('a taper that may be off one way only is as far off as the depths next to a level, not as the level itself', () => {
    const levels = [1.5, 1.8, 2];
    const tooDeep = bandShare(levels, { low: 1.5, high: 2, minus: 0, plus: 0.4 });
    expect(tooDeep).toEqual({
      depth: expect.closeTo(1.5, 9),
      level: 1.8,
      share: expect.closeTo(0.3 / 0.4, 9),
    });
    const tooShallow = bandShare(levels, { low: 1.5, high: 2, minus: 0.4, plus: 0 });
    expect(tooShallow).toEqual({
      depth: expect.closeTo(1.8, 9),
      level: 1.5,
      share: expect.closeTo(0.3 / 0.4, 9),
    });
    // A level below all that is asked serves nothing where no depth may be missed.
    expect(bandShare([1, 2.1], { low: 1.9, high: 2, minus: 0, plus: 0.4 })?.share).toBeCloseTo(0.2 / 0.4, 9);
    expect(bandShare([1.5, 2], { low: 1.2, high: 1.5, minus: 0, plus: 0.4 })?.share).toBeCloseTo(
      0.3 / 0.4,
      9,
    );
  });

  test('a taper without tolerance has no number of levels', () => {
    expect(fewestLevels([{ low: 1, high: 2, minus: 0, plus: 0 }])).toBeUndefined();
  });
});

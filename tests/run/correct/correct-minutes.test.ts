/** Minutes left (M7.3) held to every choice there is: which floors can be met together, and how well. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { depthsLeft, type StillAsked } from '#run/correct-minutes.ts';
import { trials } from '#support/seeds/property-runs.ts';

const floor = (aim: number, plus = 0.05, minus = 0.07): StillAsked => ({
  low: aim - minus,
  aim,
  high: aim + plus,
});

const isMet = ({ low, high }: StillAsked, depth: number): boolean =>
  depth >= low - 1e-9 && depth <= high + 1e-9;

function countMet(groups: readonly (readonly StillAsked[])[], depths: readonly number[]): number {
  return groups.flatMap((group, i) => group.filter((each) => isMet(each, depths[i] ?? Number.NaN))).length;
}

/** Every sequence that never rises, of the depths at which some floor begins or ends to be met. */
function mostThatCanBe(groups: readonly (readonly StillAsked[])[]): number {
  const places = [0, ...groups.flat().flatMap(({ low, high }) => [low, high])].filter((at) => at >= 0);
  const tryFrom = (group: number, most: number): number => {
    const regions = groups[group];
    if (regions === undefined) return 0;
    return Math.max(
      ...places
        .filter((at) => at <= most)
        .map((at) => regions.filter((each) => isMet(each, at)).length + tryFrom(group + 1, at)),
    );
  };
  return tryFrom(0, Number.POSITIVE_INFINITY);
}

/** The least worst share with which these floors can all be met, by halving; each stage as shallow as it may. */
function leastShare(groups: readonly (readonly StillAsked[])[]): number {
  const isEnough = (share: number): boolean => {
    let least = 0;
    for (const group of groups.toReversed()) {
      const low = Math.max(least, ...group.map((each) => each.aim - share * (each.aim - each.low)));
      if (group.some((each) => low > each.aim + share * (each.high - each.aim) + 1e-12)) return false;
      least = low;
    }
    return true;
  };
  let [low, high] = [0, 1];
  for (let halving = 0; halving < 40; halving++) {
    const middle = (low + high) / 2;
    if (isEnough(middle)) high = middle;
    else low = middle;
  }
  return high;
}

const shareOf = ({ low, aim, high }: StillAsked, depth: number): number =>
  depth > aim ? (depth - aim) / (high - aim) : (aim - depth) / (aim - low);

describe('M7.3 depths still to be etched', () => {
  test('lost-floor-in-a-pool: the floor of one stage is given up for those of two later ones, not they for it', () => {
    // The open floor takes 1.8 more, the next two 2.2 and 2.0: one of three, or two.
    const groups = [[floor(1.8)], [floor(2.2)], [floor(2)]];
    const depths = depthsLeft(groups);
    expect(depths).toEqual([expect.closeTo(2.2, 9), expect.closeTo(2.2, 9), expect.closeTo(2, 9)]);
  });

  test('a floor given up still comes as near as those that are met let it', () => {
    // 1.8 is shallower than 2.2: one against one. The second stage then goes as deep as the first.
    expect(depthsLeft([[floor(1.8)], [floor(2.2)]])).toEqual([
      expect.closeTo(1.8, 9),
      expect.closeTo(1.8, 9),
    ]);
    // 1.3 for two floors; what is too deep already by 0.4 gets no more than it must.
    expect(depthsLeft([[floor(-0.4), floor(1.3), floor(1.31)], [floor(0.6)]])[1]).toBeCloseTo(0.6, 9);
  });

  test('a stage without regions follows the next; every floor too deep: nothing more', () => {
    expect(depthsLeft([[], [floor(0.8)], []])).toEqual([expect.closeTo(0.8, 9), expect.closeTo(0.8, 9), 0]);
    expect(depthsLeft([[floor(-0.3)], [], [floor(-0.2)]])).toEqual([0, 0, 0]);
  });

  const asked = fc
    .record({
      aim: fc.integer({ min: -3, max: 24 }),
      plus: fc.integer({ min: 1, max: 4 }),
      minus: fc.integer({ min: 1, max: 5 }),
    })
    .map(({ aim, plus, minus }) => floor(aim / 10, plus / 20, minus / 20));

  test('meet as many floors as any choice could, and those with the least worst share of tolerance', () => {
    fc.assert(
      fc.property(fc.array(fc.array(asked, { maxLength: 3 }), { minLength: 1, maxLength: 4 }), (groups) => {
        const depths = depthsLeft(groups);
        for (const [i, depth] of depths.entries())
          expect(depth).toBeLessThanOrEqual((depths[i - 1] ?? depth) + 1e-9);
        expect(Math.min(...depths)).toBeGreaterThanOrEqual(0);
        expect(countMet(groups, depths)).toBe(mostThatCanBe(groups));
        const met = groups.map((group, i) => group.filter((each) => isMet(each, depths[i] ?? Number.NaN)));
        const worst = Math.max(
          0,
          ...met.flatMap((group, i) => group.map((each) => shareOf(each, depths[i] ?? 0))),
        );
        expect(worst).toBeLessThanOrEqual(leastShare(met) + 1e-6);
      }),
      { numRuns: trials(300) },
    );
  });
});

/** The fewest extra dips, against every set of depths there is on a grid. */
import { describe, expect, test } from 'vitest';
import { type ExtraEtch, extraDips } from '#run/rework/extra-dips.ts';
import { PROPERTY_SEED } from '#support/seeds/seed-of-run.ts';

/** What brings a floor that reads so thick to 2.00, minus and plus as given. */
const extra = (read: number, plus = 0.05, minus = 0.05): ExtraEtch => ({
  least: Math.max(0, read - 2 - minus),
  most: read - 2 + plus,
});

describe('M8.5 extra dips', () => {
  test('2.05 and 2.15 for 2.00 ± 0.05: [0, 0.10] and [0.10, 0.20], one dip of 0.10, nothing covered', () => {
    const { depths, gets } = extraDips([extra(2.05), extra(2.15)]);
    expect(depths).toEqual([expect.closeTo(0.1, 6)]);
    expect(gets).toEqual([expect.closeTo(0.1, 6), expect.closeTo(0.1, 6)]);
  });

  test('floors that are right are left alone, and one too thin is not saved', () => {
    expect(extraDips([extra(2.02), extra(1.97)])).toEqual({ depths: [], gets: [0, 0] });
    expect(extraDips([extra(1.9), extra(2.3)]).gets[0]).toBeUndefined();
  });

  test('a right floor that the dip would pass is covered first, and the dip goes to the middle of what is asked', () => {
    const { depths, gets } = extraDips([extra(1.98, 0.03), extra(2.3, 0.06, 0.04)]);
    expect(depths).toEqual([expect.closeTo(0.31, 6)]);
    expect(gets).toEqual([0, expect.closeTo(0.31, 6)]);
  });

  test('two depths where one will not do', () => {
    expect(extraDips([extra(2.1), extra(2.4)]).depths).toEqual([
      expect.closeTo(0.1, 6),
      expect.closeTo(0.4, 6),
    ]);
  });

  /** Every set of so many depths on the grid of the intervals' ends, smallest sets first. */
  function exhaustive(floors: readonly ExtraEtch[]) {
    const canSave = floors.filter(({ most }) => most >= 0);
    const needed = canSave.filter(({ least }) => least > 0);
    const grid = [...new Set(floors.flatMap(({ least, most }) => [least, most]))].filter((each) => each > 0);
    const sets = (size: number): number[][] =>
      size === 0
        ? [[]]
        : sets(size - 1).flatMap((set) =>
            grid.filter((each) => each > (set.at(-1) ?? 0)).map((each) => [...set, each]),
          );
    const meets = (set: readonly number[], { least, most }: ExtraEtch) =>
      set.some((each) => each >= least && each <= most);
    for (let size = 0; ; size++) {
      const doing = sets(size).filter((set) => needed.every((floor) => meets(set, floor)));
      if (doing.length === 0) continue;
      // Of those, as few finished floors to cover first as can be.
      const covered = (set: readonly number[]) =>
        canSave.filter((floor) => floor.least <= 0 && !meets(set, floor)).length;
      return { dips: size, covered: size === 0 ? 0 : Math.min(...doing.map(covered)) };
    }
  }

  test('500 random parts: as few dips as any set has, and as few floors to cover first', () => {
    let state = PROPERTY_SEED >>> 0;
    const random = (count: number) => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return Math.floor((state / 2 ** 32) * count);
    };
    let saved = 0;
    for (let part = 0; part < 500; part++) {
      // In whole hundredths, so that ends meet exactly as often as not.
      const floors = Array.from({ length: 1 + random(5) }, () => {
        const [off, plus, minus] = [random(50) - 12, 1 + random(8), 1 + random(9)];
        return { least: Math.max(0, off - minus), most: off + plus };
      });
      const { depths, gets } = extraDips(floors);
      const { dips, covered } = exhaustive(floors);
      expect(depths).toHaveLength(dips);
      const first = floors.filter(
        (floor, index) => floor.least <= 0 && gets[index] === 0 && dips > 0 && floor.most >= 0,
      );
      expect(first.length).toBe(covered);
      for (const [index, { least, most }] of floors.entries()) {
        const own = gets[index];
        if (own === undefined) expect(most).toBeLessThan(0);
        else {
          saved++;
          expect(own).toBeGreaterThanOrEqual(least - 1e-6);
          expect(own).toBeLessThanOrEqual(most + 1e-6);
          expect(own === 0 || depths.some((depth) => Math.abs(depth - own) < 1e-9)).toBe(true);
        }
      }
    }
    expect(saved).toBeGreaterThan(1000);
  });
});

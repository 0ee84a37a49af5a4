import fc from 'fast-check';
import { expect, test } from 'vitest';
import { groupNear } from '#geometry/near-values.ts';

const figure = (each: { readonly depth: number }) => each.depth;
const depths = (...all: number[]) => all.map((depth) => ({ depth }));

test('depths a rounding apart are one group, in rising order; a gap beyond it begins the next', () => {
  const groups = groupNear(depths(2.4, 1.2, 2.4001, 1.2002, 0.7), figure, 0.0003);
  expect(groups).toEqual([depths(0.7), depths(1.2, 1.2002), depths(2.4, 2.4001)]);
});

test('a gap of exactly the tolerance does not part, and a chain of such gaps is one', () => {
  expect(groupNear(depths(1, 1.5, 2, 2.75), figure, 0.5)).toEqual([depths(1, 1.5, 2), depths(2.75)]);
});

test('nothing gives nothing', () => {
  expect(groupNear([], figure, 1)).toEqual([]);
});

test('groups lie further apart than the tolerance, figures in one follow closer (random)', () => {
  fc.assert(
    fc.property(fc.array(fc.nat(60), { minLength: 1, maxLength: 20 }), fc.nat(5), (figures, apart) => {
      const groups = groupNear(figures, (each) => each, apart);
      expect(groups.flat()).toEqual([...figures].sort((a, b) => a - b));
      groups.forEach((group, i) => {
        group.slice(1).forEach((each, at) => {
          expect(each - (group[at] ?? each)).toBeLessThanOrEqual(apart);
        });
        const next = groups[i + 1]?.[0];
        if (next !== undefined) expect(next - (group.at(-1) ?? next)).toBeGreaterThan(apart);
      });
    }),
  );
});

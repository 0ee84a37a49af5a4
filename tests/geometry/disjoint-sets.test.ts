import fc from 'fast-check';
import { expect, test } from 'vitest';
import { disjointSets } from '#geometry/disjoint-sets.ts';

test('a set goes by its smallest number', () => {
  const { find, unite } = disjointSets(7);
  unite(5, 3);
  unite(6, 5);
  unite(1, 6);
  expect([0, 1, 2, 3, 4, 5, 6].map(find)).toEqual([0, 1, 2, 1, 4, 1, 1]);
});

test('whatever the order, a number is with the least that some chain of pairs leads to', () => {
  const pair = fc.tuple(fc.nat(11), fc.nat(11));
  fc.assert(
    fc.property(fc.array(pair, { maxLength: 14 }), (pairs) => {
      const { find, unite } = disjointSets(12);
      for (const [a, b] of pairs) unite(a, b);
      const least = Array.from({ length: 12 }, (_, item) => item);
      for (let round = 0; round < 12; round++) {
        for (const [a, b] of pairs) least[a] = least[b] = Math.min(least[a] ?? a, least[b] ?? b);
      }
      expect(least.map((_, item) => find(item))).toEqual(least);
    }),
  );
});

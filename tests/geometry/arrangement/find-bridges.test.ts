import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findBridges } from '#geometry/arrangement/find-bridges.ts';

const bridges = (pairs: readonly (readonly [number, number])[], places: number) =>
  findBridges(
    pairs.map(([start, end]) => ({ start, end })),
    places,
  ).flatMap((isBridge, number) => (isBridge ? [number] : []));

test('a stray line, a bridge between two outlines and a tree are bridges; outlines are not', () => {
  // Triangle 0-1-2, bridge 2-3, triangle 3-4-5, stray 5-6-7.
  const pairs = [
    [0, 1],
    [1, 2],
    [2, 0],
    [2, 3],
    [3, 4],
    [4, 5],
    [5, 3],
    [5, 6],
    [7, 6],
  ] as const;
  expect(bridges(pairs, 9)).toEqual([3, 7, 8]);
});

test('two lines between the same places, and one back to its own, are none', () => {
  expect(
    bridges(
      [
        [0, 1],
        [1, 0],
        [1, 2],
        [2, 2],
      ],
      3,
    ),
  ).toEqual([2]);
});

test('a link is a bridge when without it its ends no longer hang together (random)', () => {
  const pair = fc.tuple(fc.nat(9), fc.nat(9));
  fc.assert(
    fc.property(fc.array(pair, { maxLength: 16 }), (pairs) => {
      const hangsTogether = (without: number): boolean => {
        const [from, to] = pairs[without] ?? [0, 0];
        const reached = new Set([from]);
        for (let round = 0; round < 10; round++) {
          pairs.forEach(([a, b], number) => {
            if (number === without) return;
            if (reached.has(a)) reached.add(b);
            if (reached.has(b)) reached.add(a);
          });
        }
        return reached.has(to);
      };
      const expected = pairs.flatMap((_, number) => (hangsTogether(number) ? [] : [number]));
      expect(bridges(pairs, 10)).toEqual(expected);
    }),
  );
});

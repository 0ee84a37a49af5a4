/** Slots shared out to templates is the colouring of a graph: graphs with known chromatic numbers (textbook figures, from memory). */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shareOut } from '#handoff/template/share-out.ts';

type Pairs = (readonly [number, number])[];

const cycle = (length: number): Pairs => Array.from({ length }, (_, at) => [at, (at + 1) % length] as const);
const complete = (size: number): Pairs =>
  Array.from({ length: size }, (_, a) => Array.from({ length: a }, (_, b) => [b, a] as const)).flat();
/** Outer cycle, inner star, spokes. */
const petersen: Pairs = [
  ...cycle(5),
  ...Array.from({ length: 5 }, (_, at) => [5 + at, 5 + ((at + 2) % 5)] as const),
  ...Array.from({ length: 5 }, (_, at) => [at, at + 5] as const),
];
/** Mycielski's graph of the 5-cycle: no triangle, and yet four colours. */
const groetzsch: Pairs = [
  ...cycle(5),
  ...cycle(5).flatMap(
    ([a, b]): Pairs => [
      [a, b + 5],
      [b, a + 5],
    ],
  ),
  ...Array.from({ length: 5 }, (_, at) => [at + 5, 10] as const),
];

describe('sharing slots out', () => {
  test.each([
    ['no near pair', 4, [], 1, 1],
    ['an even ring', 8, cycle(8), 2, 2],
    ['an odd ring', 7, cycle(7), 3, 2],
    ['all near to each other', 5, complete(5), 5, 5],
    ['Petersen’s graph', 10, petersen, 3, 2],
    ['Grötzsch’s graph', 11, groetzsch, 4, 2],
  ] as const)('%s: %i slots', (_, slots, pairs, chromatic, clique) => {
    const { count, least, templates } = shareOut(slots, pairs);
    expect(count).toBe(chromatic);
    expect(least).toBe(clique);
    for (const [a, b] of pairs) expect(templates[a]).not.toBe(templates[b]);
  });

  test('five rows and five columns, each near to all of the others but its own: two templates, where one after the other takes five', () => {
    const crown = Array.from({ length: 5 }, (_, row) =>
      Array.from({ length: 5 }, (_, column) => [2 * row, 2 * column + 1] as const).filter(
        (_, column) => column !== row,
      ),
    ).flat();
    expect(shareOut(10, crown).count).toBe(2);
  });

  test('four slots near to each other are found though each has an earlier neighbour that is near to no other', () => {
    const cluster: Pairs = complete(4).map(([a, b]) => [a + 4, b + 4] as const);
    const loose: Pairs = [0, 1, 2, 3].map((at) => [at, at + 4] as const);
    expect(shareOut(8, [...loose, ...cluster])).toMatchObject({ count: 4, least: 4 });
  });

  test('nothing to share out takes no template, one slot one', () => {
    expect(shareOut(0, [])).toEqual({ templates: [], count: 0, least: 0 });
    expect(shareOut(1, [])).toEqual({ templates: [0], count: 1, least: 1 });
  });

  test('rows side by side, each near to the next only, take two templates whatever their number (Brélaz: exact where two will do)', () => {
    const pairs = fc.array(fc.tuple(fc.integer({ min: 0, max: 19 }), fc.integer({ min: 20, max: 39 })));
    fc.assert(
      fc.property(pairs, (some) => {
        expect(shareOut(40, some).count).toBe(some.length === 0 ? 1 : 2);
      }),
    );
  });

  test('no pair on one template, and never fewer than are all near to each other', () => {
    const slot = fc.integer({ min: 0, max: 14 });
    const pairs = fc.array(fc.tuple(slot, slot)).map((all) => all.filter(([a, b]) => a !== b));
    fc.assert(
      fc.property(pairs, (some) => {
        const { templates, count, least } = shareOut(15, some);
        for (const [a, b] of some) expect(templates[a]).not.toBe(templates[b]);
        expect(count).toBeGreaterThanOrEqual(least);
        expect(new Set(templates).size).toBe(count);
      }),
    );
  });
});

import { describe, expect, test } from 'vitest';
import { parallelChain, parallelPath } from '#geometry/grow/parallel-chain.ts';
import { arcSpan, type Loop, lineSpan } from '#geometry/span.ts';
import { circle, polygon, rectangle } from '#support/geometry/shapes.ts';

const step = polygon([
  [0, 0],
  [40, 0],
  [40, 30],
  [22, 30],
  [22, 14],
  [0, 14],
]);

test('each span has its parallel, and a corner that turns away a round of its own', () => {
  const pieces = parallelChain(step, 3)?.pieces ?? [];
  expect(pieces.map(({ from, to }) => [from, to])).toEqual([
    [0, 0],
    [1, 1],
    [2, 2],
    [3, 3],
    [3, 4],
    [4, 4],
    [5, 5],
  ]);
  const round = pieces[4]?.span;
  expect(round).toMatchObject({
    kind: 'arc',
    radius: 3,
    center: { x: 22, y: 14 },
    sweep: expect.closeTo(-Math.PI / 2, 12),
  });
  // Cut at one end by the side, whole to the round at the other.
  expect(pieces[5]?.span).toMatchObject({
    start: { x: expect.closeTo(22, 12), y: expect.closeTo(11, 12) },
    end: { x: expect.closeTo(3, 12), y: expect.closeTo(11, 12) },
  });
});

describe('which way the border bends', () => {
  const { bendsOneWay } = parallelChain(step, 3) ?? { bendsOneWay: () => undefined };

  test('up to half a turn to one side', () => {
    expect([1, 2, 3].map((to) => bendsOneWay(0, to))).toEqual([true, true, false]);
    // Round by the seam: the corners at 0 and 40.
    expect(bendsOneWay(5, 1)).toBe(true);
  });

  test('not once it turned the other way', () => {
    expect(bendsOneWay(3, 4)).toBe(true);
    expect(bendsOneWay(2, 4)).toBe(false);
    expect(bendsOneWay(3, 5)).toBe(false);
  });

  test('all round a circle', () => {
    const round = parallelChain(circle(4, 1, 9), 2);
    expect([round?.bendsOneWay(0, 1), round?.bendsOneWay(1, 0)]).toEqual([true, true]);
  });
});

test('turns too small to part the parallels add up all the same', () => {
  // 12 nm between the ends of two parallels, which no grid tells apart.
  const lines = 36_000;
  const round = polygon(
    Array.from({ length: lines }, (_, i) => {
      const angle = (2 * Math.PI * i) / lines;
      return [8 * Math.cos(angle), 8 * Math.sin(angle)];
    }),
  );
  const chain = parallelChain(round, 0.07);
  expect([0.3, 0.49, 0.51, 0.7].map((share) => chain?.bendsOneWay(100, 100 + share * lines))).toEqual([
    true,
    true,
    false,
    false,
  ]);
});

describe('there is none', () => {
  test('of an arc about its centre, or past it', () => {
    expect(parallelChain(circle(0, 0, 3), 3)).toBeUndefined();
    expect(parallelChain(circle(0, 0, 3), 3.5)).toBeUndefined();
  });

  test('where neighbours leave nothing of a side, also where they pass each other', () => {
    expect(parallelChain(rectangle(0, 0, 30, 6), 3)).toBeUndefined();
    expect(parallelChain(rectangle(0, 0, 30, 6), 4)).toBeUndefined();
  });

  test('where the border turns back on itself', () => {
    const needle: Loop = polygon([
      [0, 0],
      [30, 0],
      [30, 20],
      [0.01, 20],
      [20, 19],
      [0, 18.9],
    ]);
    expect(parallelChain(needle, 0.2)).toBeUndefined();
  });
});

test('arcs that a drawing rounded off their lines still meet them', () => {
  // The bulge has six decimals: tangents differ by 2e-6 radians.
  const arc = arcSpan({ center: { x: 30, y: 4 }, radius: 4, from: -Math.PI / 2, sweep: Math.PI / 2 + 2e-6 });
  const loop = [
    lineSpan({ x: 0, y: 0 }, arc.start),
    arc,
    lineSpan(arc.end, { x: 34, y: 25 }),
    lineSpan({ x: 34, y: 25 }, { x: 0, y: 25 }),
    lineSpan({ x: 0, y: 25 }, { x: 0, y: 0 }),
  ];
  const pieces = parallelChain(loop, 1.5)?.pieces ?? [];
  expect(pieces).toHaveLength(5);
  pieces.forEach(({ span }, at) => {
    expect(span.end).toEqual(pieces[(at + 1) % pieces.length]?.span.start);
  });
});

describe('of a chain that does not close', () => {
  const bent = [
    lineSpan({ x: 0, y: 0 }, { x: 20, y: 0 }),
    arcSpan({ center: { x: 20, y: 7 }, radius: 7, from: -Math.PI / 2, sweep: Math.PI / 2 }),
    lineSpan({ x: 27, y: 7 }, { x: 27, y: 19 }),
    lineSpan({ x: 27, y: 19 }, { x: 45, y: 19 }),
  ];

  test('the ends stay square, and the corners between are cut or gone round', () => {
    const path = parallelPath(bent, 3) ?? [];
    expect(path.map(({ kind }) => kind)).toEqual(['line', 'arc', 'line', 'arc', 'line']);
    expect(path[0]?.start).toEqual({ x: 0, y: 3 });
    expect(path[1]).toMatchObject({ radius: 4, center: { x: 20, y: 7 } });
    expect(path.at(-1)?.end).toMatchObject({ x: 45, y: expect.closeTo(22, 12) });
  });

  test('by nothing it is the chain itself', () => {
    expect(parallelPath(bent, 0)).toEqual(bent);
  });

  test('where nothing is left of a span there is none', () => {
    expect(parallelPath(bent, 7)).toBeUndefined();
  });
});

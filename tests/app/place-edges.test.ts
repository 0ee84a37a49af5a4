import { expect, test } from 'vitest';
import { keptApart } from '#app/views/sheet/words/kept-apart.ts';
import { placeEdges, type Segment } from '#app/views/sheet/words/place-edges.ts';

const ring = (half: number): Segment[] => {
  const corners = [
    { x: 300 - half, y: 200 - half },
    { x: 300 + half, y: 200 - half },
    { x: 300 + half, y: 200 + half },
    { x: 300 - half, y: 200 + half },
  ];
  return corners.map((to, index) => ({ from: corners.at(index - 1) ?? to, to }));
};
const room = { width: 840, height: 440, taken: [], lines: [] };
const edge = (half: number) => ({
  id: `${half}`,
  wanted: { x: 300, y: 200 + half },
  lines: [ring(half)],
  width: 44,
});
const away = (half: number, { x, y }: { x: number; y: number }) =>
  Math.abs(Math.max(Math.abs(x - 300), Math.abs(y - 200)) - half);

test('in rings 27 px apart each figure stands on its own edge and touches no other', () => {
  const halves = [150, 123, 96, 69, 42];
  const placed = placeEdges(halves.map(edge), room);
  expect(placed.map(({ id }) => Number(id))).toEqual(halves);
  placed.forEach(({ id, at, box }) => {
    expect(away(Number(id), at)).toBeLessThan(1e-9);
    for (const other of halves.filter((each) => each !== Number(id))) {
      const corners = [box.minX, box.maxX].flatMap((x) => [box.minY, box.maxY].map((y) => ({ x, y })));
      const sides = corners.map(({ x, y }) => Math.max(Math.abs(x - 300), Math.abs(y - 200)) > other);
      expect(new Set(sides).size).toBe(1);
    }
  });
});

test('a mark in its place moves it along its edge; with no room left on its edge there is none', () => {
  const taken = [{ minX: 270, minY: 340, maxX: 330, maxY: 360 }];
  const [moved] = placeEdges([edge(150)], { ...room, taken });
  expect(away(150, moved?.at ?? { x: 0, y: 0 })).toBeLessThan(1e-9);
  expect(Math.abs((moved?.at.x ?? 300) - 300)).toBeGreaterThan(30);
  // 13 px apart: as high as a figure with what it keeps clear.
  expect(placeEdges([edge(55), edge(46), edge(37)].slice(0, 3), room)).toEqual([]);
});

test('of two texts that run into each other the first stays, and one clear of both is kept', () => {
  const text = (name: string, minX: number) => ({ name, box: { minX, minY: 0, maxX: minX + 50, maxY: 12 } });
  const kept = keptApart([text('.090 ±.005', 0), text('.080 (2.03)', 49), text('1/16', 54)]);
  expect(kept.map(({ name }) => name)).toEqual(['.090 ±.005', '1/16']);
});

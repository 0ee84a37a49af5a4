import { describe, expect, test } from 'vitest';
import { loopOfHalves, originOf, traceFaces } from '#geometry/arrangement/trace-faces.ts';
import { lineSpan, loopArea } from '#geometry/span.ts';

/** Vertices and straight edges between them. */
function graph(
  points: readonly (readonly [number, number])[],
  pairs: readonly (readonly [number, number])[],
) {
  const vertices = points.map(([x, y]) => ({ x, y }));
  return pairs.map(([start, end]) => {
    const [from, to] = [vertices[start], vertices[end]];
    if (from === undefined || to === undefined) throw new Error('an edge ends at vertices');
    return { span: lineSpan(from, to), start, end };
  });
}

/** A plate 7 × 3 divided at x = 4, and a triangle of area 3 beside it. */
const edges = graph(
  [
    [0, 0],
    [4, 0],
    [7, 0],
    [7, 3],
    [4, 3],
    [0, 3],
    [10, 0],
    [13, 0],
    [11, 2],
  ],
  [
    [0, 1],
    [1, 2],
    [2, 3],
    [3, 4],
    [4, 5],
    [5, 0],
    [4, 1],
    [6, 7],
    [8, 7],
    [8, 6],
  ],
);

describe('faces of a plane graph', () => {
  const cycles = traceFaces(edges, 9);
  const areas = cycles.map(({ halves }) => loopArea(loopOfHalves(edges, halves)));

  test('are walked with the face on the left, and once from outside a part', () => {
    expect([...areas].sort((a, b) => a - b)).toEqual([-21, -3, 3, 9, 12]);
    expect(cycles.map(({ isOutside }) => isOutside)).toEqual(areas.map((area) => area < 0));
  });

  test('go by the smallest vertex of their part', () => {
    expect(cycles.map(({ part }) => part)).toEqual(areas.map((area) => (Math.abs(area) === 3 ? 6 : 0)));
  });

  test('use each half-edge once, one after the other', () => {
    const halves = cycles.flatMap((cycle) => cycle.halves);
    expect([...halves].sort((a, b) => a - b)).toEqual(Array.from({ length: 20 }, (_, half) => half));
    for (const cycle of cycles) {
      cycle.halves.forEach((half, at) => {
        const next = cycle.halves[(at + 1) % cycle.halves.length] ?? half;
        expect(originOf(edges, half ^ 1)).toBe(originOf(edges, next));
      });
    }
  });
});

import { describe, expect, test } from 'vitest';
import { arrange } from '#geometry/arrangement/arrange.ts';
import { nestCycles } from '#geometry/arrangement/nest-cycles.ts';
import { traceFaces } from '#geometry/arrangement/trace-faces.ts';
import { type Loop, loopArea } from '#geometry/span.ts';
import { polygon, rectangle, sourced } from '#support/geometry/shapes.ts';

function nested(...loops: readonly Loop[]) {
  const { vertices, edges } = arrange(sourced(loops), { joinTolerance: 0 }).arrangement;
  return nestCycles(traceFaces(edges, vertices.length), { edges, vertices });
}
const areas = (...loops: readonly Loop[]) => nested(...loops).map(({ loops: all }) => all.map(loopArea));

describe('connected parts laid into the faces that hold them', () => {
  test('a hole is in the smallest face round it; the outside has holes only', () => {
    expect(areas(rectangle(0, 0, 50, 30), rectangle(10, 5, 40, 25), rectangle(12, 8, 15, 12))).toEqual([
      [-1500],
      [1500, -600],
      [600, -12],
      [12],
    ]);
  });

  test('two holes follow by their least vertex, and both count away', () => {
    const [, land] = nested(rectangle(0, 0, 50, 30), rectangle(30, 5, 33, 9), rectangle(10, 15, 18, 17));
    expect(land?.loops.map(loopArea)).toEqual([1500, -16, -12]);
    expect(land?.area).toBe(1500 - 28);
  });

  test('what lies beside is in none, though its box is', () => {
    const corner = polygon([
      [0, 0],
      [30, 0],
      [0, 30],
    ]);
    expect(areas(corner, rectangle(25, 25, 28, 27))).toEqual([[-450, -6], [450], [6]]);
  });

  test('a hole that touches its border in a corner is a loop of its own', () => {
    const touching = polygon([
      [0, 8],
      [6, 5],
      [6, 11],
    ]);
    expect(areas(rectangle(0, 0, 20, 16), touching)).toEqual([[-320], [320, -18], [18]]);
  });

  test('two outlines that share a corner are two loops of the outside', () => {
    expect(areas(rectangle(0, 0, 4, 3), rectangle(4, 3, 9, 5))).toEqual([[-12, -10], [12], [10]]);
  });
});

import { describe, expect, test } from 'vitest';
import { arrange } from '#geometry/arrangement/arrange.ts';
import { halfEdgesOf, traceBorder } from '#geometry/arrangement/half-edges.ts';
import { loopArea } from '#geometry/span.ts';
import { rectangle, sourced } from '#support/geometry/shapes.ts';

/** Three bays side by side, 4, 3 and 5 wide and 6 high, with an island of 2 in the last. */
const { arrangement } = arrange(
  sourced([rectangle(0, 0, 4, 6), rectangle(4, 0, 7, 6), rectangle(7, 0, 12, 6), rectangle(9, 2, 11, 3)]),
  { joinTolerance: 0 },
);
const walk = halfEdgesOf(arrangement);
const all = Array.from({ length: walk.count }, (_, half) => half);
const faceOf = (area: number) => arrangement.faces.findIndex((face) => Math.abs(face.area - area) < 1e-9);
const [left, middle, right, island] = [faceOf(24), faceOf(18), faceOf(28), faceOf(2)];
const bordersOf = (...faces: readonly number[]) =>
  traceBorder(walk, all, (face) => faces.includes(face))
    .map((chain) => loopArea(chain.map(walk.spanOf)))
    .sort((a, b) => b - a);

describe('half-edges', () => {
  test('are two an edge, each with its own face on the left', () => {
    expect(walk.count).toBe(2 * arrangement.edges.length);
    arrangement.edges.forEach((edge, number) => {
      expect([walk.leftOf(2 * number), walk.rightOf(2 * number)]).toEqual([edge.left, edge.right]);
      expect([walk.leftOf(2 * number + 1), walk.rightOf(2 * number + 1)]).toEqual([edge.right, edge.left]);
      expect([walk.startOf(2 * number), walk.startOf(2 * number + 1)]).toEqual([edge.start, edge.end]);
      expect(walk.spanOf(2 * number)).toBe(edge.span);
      expect(walk.spanOf(2 * number + 1).start).toBe(edge.span.end);
    });
  });

  test('follow round the face on the left, each where the one before ended', () => {
    for (const half of all) {
      const next = walk.nextOf(half);
      expect(walk.leftOf(next)).toBe(walk.leftOf(half));
      expect(walk.startOf(next)).toBe(walk.startOf(half ^ 1));
    }
  });
});

describe('the border of a set of faces', () => {
  test('leaves out what lies between them', () => {
    expect(bordersOf(left)).toEqual([24]);
    expect(bordersOf(left, middle)).toEqual([42]);
    expect(bordersOf(left, right)).toEqual([30, 24, -2]);
    expect(bordersOf(left, middle, right, island)).toEqual([72]);
    expect(bordersOf()).toEqual([]);
  });
});

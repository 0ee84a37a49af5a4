import { describe, expect, test } from 'vitest';
import { arrange } from '#geometry/arrangement/arrange.ts';
import { slitEnds } from '#geometry/arrangement/slit-ends.ts';
import { spanLength } from '#geometry/span.ts';
import { polygon, rectangle, sourced } from '#support/geometry/shapes.ts';

const endsBetween = (gap: number) =>
  slitEnds(
    arrange(sourced([rectangle(0, 0, 30, 20), rectangle(30 + gap, 4, 50, 13)]), { joinTolerance: 0 })
      .arrangement,
  );

test('two outlines 0.004 mm apart have a slit with an end at both corners of the lower one', () => {
  const ends = endsBetween(0.004);
  expect(ends.map(({ span }) => span.start.y).sort((a, b) => a - b)).toEqual([4, 13]);
  for (const { span } of ends) {
    expect(spanLength(span)).toBeCloseTo(0.004, 9);
    expect(span.start.x).toBeCloseTo(30.004, 9);
    expect(span.end).toEqual({ x: expect.closeTo(30, 9), y: expect.closeTo(span.start.y, 9) });
  }
});

test('0.0052 mm apart they have none, nor where they meet', () => {
  expect(endsBetween(0.0052)).toEqual([]);
  expect(endsBetween(0)).toEqual([]);
});

describe('along a slope of 3 in 4, 50 long, with another outline 0.004 mm beside it', () => {
  const slope = polygon([
    [0, 0],
    [40, 0],
    [0, 30],
  ]);
  /** So far up the slope, and so far out from it. */
  const at = (up: number, out: number): [number, number] => [40 - 0.8 * up + 0.6 * out, 0.6 * up + 0.8 * out];
  const GAP = 0.004;
  const ends = (...outlines: readonly (readonly [number, number][])[]) => {
    const { arrangement } = arrange(sourced([slope, ...outlines.map(polygon)]), { joinTolerance: 0 });
    return slitEnds(arrangement).map(({ span, edge }) => {
      const { x, y } = span.end;
      const on = arrangement.edges[edge]?.span;
      return [Math.round(Math.hypot(40 - x, y)), on === undefined ? 0 : Math.round(spanLength(on))];
    });
  };
  const sorted = (found: readonly number[][]) => [...found].sort(([a = 0], [b = 0]) => a - b);

  test('an end lies at its corners, and none where its side is drawn in two', () => {
    expect(sorted(ends([at(10, GAP), at(10, 9), at(36, 9), at(36, GAP), at(23, GAP)]))).toEqual([
      [10, 50],
      [36, 50],
    ]);
  });

  test('an end lies at both bends of a jog in its side, though it stays as near', () => {
    // 0.001 nearer over 0.006, a bend of 9.5° and one back: more than what runs on (5.7°, a cosine of 0.995).
    const bend = at(23, GAP - 0.001);
    expect(
      sorted(ends([at(10, GAP), at(10, 9), at(36, 9), at(36, GAP), at(23.006, GAP), bend])).map(([up]) => up),
    ).toEqual([10, 23, 23, 36]);
  });

  test('an end lies where two outlines side by side meet', () => {
    const lower = [at(10, GAP), at(10, 30), at(23, 30), at(23, GAP)];
    const upper = [at(23, GAP), at(23, 30), at(36, 30), at(36, GAP)];
    expect(sorted(ends(lower, upper)).map(([up]) => up)).toEqual([10, 23, 36]);
  });
});

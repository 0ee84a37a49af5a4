/** The bound held to curves whose greatest distance from the chord has a closed form, or is read at 2000 places. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chordBound, type QuarterReadings } from '#front/section/chord-bound.ts';

/** Readings above the chord from `from` to `to`, and the most that there is. */
function judged(curve: (at: number) => number, from: number, to: number) {
  const above = (share: number): number =>
    curve(from + (to - from) * share) - curve(from) - (curve(to) - curve(from)) * share;
  const readings: QuarterReadings = [above(0.25), above(0.5), above(0.75)];
  const places = Array.from({ length: 2001 }, (_, i) => Math.abs(above(i / 2000)));
  return { bound: chordBound(readings), most: Math.max(...places) };
}

describe('the most that a curve leaves its chord', () => {
  test('is never less than it is for an ellipse, from anywhere to anywhere, its upright end included', () => {
    const share = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, fc.double({ min: 0.3, max: 9, noNaN: true }), (a, b, deep) => {
        const { bound, most } = judged((at) => deep * Math.sqrt(1 - at * at), Math.min(a, b), Math.max(a, b));
        expect(bound).toBeGreaterThanOrEqual(most - 1e-12);
      }),
      {
        numRuns: 400,
        examples: [
          [-1, 0.37, 2.2],
          [0.41, 1, 0.7],
          [-1, 1, 3],
        ],
      },
    );
  });

  test('is an eighth more than the sagitta of a parabola, whichever way it bends', () => {
    for (const bend of [0.7, -1.3]) {
      // y = b x² from 1 to 4: the sagitta is b · 3² / 4.
      const { bound, most } = judged((at) => bend * at * at, 1, 4);
      expect(most).toBeCloseTo((Math.abs(bend) * 9) / 4, 9);
      expect(bound / most).toBeCloseTo(1.125, 9);
    }
  });

  test('covers a curve that changes its bend on the way', () => {
    for (const [from, to] of [
      [-1, 1],
      [-0.2, 1],
      [-0.7, 1],
      [-2, 0.3],
    ] as const) {
      const { bound, most } = judged((at) => at ** 3, from, to);
      expect(bound).toBeGreaterThanOrEqual(most);
    }
  });

  test('is nothing on a straight', () => {
    expect(chordBound([0, 0, 0])).toBe(0);
  });
});

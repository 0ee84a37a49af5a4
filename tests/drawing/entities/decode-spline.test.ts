/** Splines through points: closed or not, and their directions at the ends. */
import { describe, expect, test } from 'vitest';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import { spline } from '#fixtures/tricky-splines.ts';
import { tangentAlong } from '#geometry/span.ts';
import { bytesOf, drawingText, type Tag, tags } from '#support/drawings/raw-drawing.ts';

const FIT = [
  [0, 0],
  [6, 8],
  [13, 3],
  [9, -5],
] as const;

function curveOf(text: string) {
  const [curve, ...more] = readDrawing(bytesOf(drawingText({ entities: text })), { unit: 'mm' }).curves;
  expect(more).toEqual([]);
  if (curve === undefined) throw new Error('a curve');
  const [first, last] = [curve.spans[0], curve.spans.at(-1)];
  if (first === undefined || last === undefined) throw new Error('spans');
  return { curve, first, last };
}

const through = (fit: readonly (readonly [number, number])[], flags = 8) =>
  spline({ flags, knots: [], points: [], fit });

describe('a spline through four points', () => {
  test('is open, from the first to the last', () => {
    const { curve, first, last } = curveOf(through(FIT));
    expect(curve.closed).toBe(false);
    expect([first.start, last.end]).toEqual([
      { x: 0, y: 0 },
      { x: 9, y: -5 },
    ]);
  });

  test('is closed by its flag, or by a last point on the first, and smooth there', () => {
    for (const text of [through(FIT, 9), through([...FIT, [0, 0]])]) {
      const { curve, first, last } = curveOf(text);
      expect(curve.closed).toBe(true);
      const [arriving, leaving] = [tangentAlong(last, 1), tangentAlong(first, 0)];
      expect(arriving.x * leaving.x + arriving.y * leaving.y).toBeGreaterThan(1 - 1e-6);
    }
  });

  test('two points and back are no loop', () => {
    expect(curveOf(through(FIT.slice(0, 2), 9)).curve.closed).toBe(false);
  });

  test('starts and ends in the directions given, however long, and freely without or with upright ones', () => {
    const given = (...codes: readonly Tag[]) =>
      curveOf(through(FIT).replace('\n74\n4\n', `\n74\n4\n${tags(...codes)}`));
    const { first, last } = given([12, 3], [22, -4], [32, 0], [13, -0.5], [23, 1.2], [33, 0]);
    expect(tangentAlong(first, 0)).toEqual({ x: expect.closeTo(0.6, 6), y: expect.closeTo(-0.8, 6) });
    expect(tangentAlong(last, 1)).toEqual({ x: expect.closeTo(-5 / 13, 6), y: expect.closeTo(12 / 13, 6) });
    const free = curveOf(through(FIT));
    const upright = given([12, 0], [22, 0], [32, 1]);
    expect(upright.curve.spans).toEqual(free.curve.spans);
  });
});

test('two curves end to end at a full knot are one chain, each with its own points and weights', () => {
  const { curve, first, last } = curveOf(
    spline({
      degree: 2,
      knots: [0, 0, 0, 1, 1, 1, 2, 2, 2],
      points: [
        [8, 3],
        [8, 9],
        [2, 9],
        [2, 9],
        [-4, 9],
        [-4, 3],
      ],
      weights: [1, Math.SQRT1_2, 1, 1, Math.SQRT1_2, 1],
    }),
  );
  // Two quarters of R 6 about (2, 3).
  expect([first.start, last.end]).toEqual([
    { x: 8, y: 3 },
    { x: -4, y: 3 },
  ]);
  for (const span of curve.spans) {
    expect(span).toMatchObject({ kind: 'arc', radius: expect.closeTo(6, 6) });
    expect(Math.hypot(span.end.x - 2, span.end.y - 3)).toBeCloseTo(6, 6);
  }
});

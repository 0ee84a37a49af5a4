/**
 * The cubic through points, held to its own definition (de Boor, A Practical Guide to Splines, chapter IV): through every point, slope and
 * curvature without a jump, and what is asked of the ends.
 */
import { describe, expect, test } from 'vitest';
import { splineThrough, type ThroughPoints } from '#drawing/curves/spline-through.ts';

const POINTS = [
  { x: 0, y: 0 },
  { x: 3, y: 4 },
  { x: 9, y: 1 },
  { x: 10, y: -5 },
  { x: 4, y: -7 },
];

/** Its Bézier pieces by their control points, and the length of each in its parameter. */
function piecesOf(through: Partial<ThroughPoints>) {
  const { points, knots, degree, weights } = splineThrough({
    points: POINTS,
    closed: false,
    startDirection: undefined,
    endDirection: undefined,
    ...through,
  });
  expect([degree, weights]).toEqual([3, undefined]);
  const pieces = (points.length - 1) / 3;
  expect(knots).toHaveLength(points.length + 4);
  return Array.from({ length: pieces }, (_, n) => {
    const [from, to] = [knots[3 * n + 3] ?? 0, knots[3 * n + 4] ?? 0];
    return { step: to - from, control: points.slice(3 * n, 3 * n + 4) };
  });
}

type Piece = ReturnType<typeof piecesOf>[number];

/** First and second derivative at the start (0) or the end (1) of a piece, both coordinates. */
function derivatives({ control, step }: Piece, end: 0 | 1) {
  const values = (['x', 'y'] as const).map((axis) => {
    const [a = 0, b = 0, c = 0, d = 0] = control.map((point) => point[axis]);
    return end === 0
      ? [(3 * (b - a)) / step, (6 * (a - 2 * b + c)) / step ** 2]
      : [(3 * (d - c)) / step, (6 * (b - 2 * c + d)) / step ** 2];
  });
  return values.flat();
}

const near = (values: readonly number[]) => values.map((each) => expect.closeTo(each, 9));

function expectSmooth(pieces: readonly Piece[], closed: boolean): void {
  pieces.forEach((piece, n) => {
    const next = pieces[n + 1] ?? (closed ? pieces[0] : undefined);
    if (next === undefined) return;
    expect(next.control[0]).toEqual(piece.control[3]);
    expect(derivatives(next, 0)).toEqual(near(derivatives(piece, 1)));
  });
}

describe('open', () => {
  test('it goes through every point, laid out by the chords between them', () => {
    const pieces = piecesOf({});
    expect(pieces.map(({ control }) => control[0])).toEqual(POINTS.slice(0, -1));
    expect(pieces.at(-1)?.control[3]).toEqual(POINTS.at(-1));
    expect(pieces.map(({ step }) => step)).toEqual(near([5, Math.sqrt(45), Math.sqrt(37), Math.sqrt(40)]));
    expectSmooth(pieces, false);
  });

  test('with nothing asked of its ends it does not bend there', () => {
    const pieces = piecesOf({});
    const [first, last] = [pieces[0], pieces.at(-1)];
    if (first === undefined || last === undefined) throw new Error('pieces');
    const [, bendX, , bendY] = derivatives(first, 0);
    const [, lastX, , lastY] = derivatives(last, 1);
    expect([bendX, bendY, lastX, lastY]).toEqual(near([0, 0, 0, 0]));
  });

  test('with directions it starts and ends in them, each end by itself', () => {
    const startDirection = { x: 0.6, y: -0.8 };
    const endDirection = { x: -5 / 13, y: 12 / 13 };
    const slopes = (through: Partial<ThroughPoints>) => {
      const pieces = piecesOf(through);
      expectSmooth(pieces, false);
      const [startX, bendX, startY] = derivatives(pieces[0] as Piece, 0);
      const [endX, lastX, endY] = derivatives(pieces.at(-1) as Piece, 1);
      return { start: [startX, startY], end: [endX, endY], bends: [bendX, lastX] };
    };
    const both = slopes({ startDirection, endDirection });
    expect(both.start).toEqual(near([0.6, -0.8]));
    expect(both.end).toEqual(near([-5 / 13, 12 / 13]));
    const one = slopes({ startDirection });
    expect(one.start).toEqual(near([0.6, -0.8]));
    expect(one.bends[1]).toBeCloseTo(0, 9);
    const other = slopes({ endDirection });
    expect(other.end).toEqual(near([-5 / 13, 12 / 13]));
    expect(other.bends[0]).toBeCloseTo(0, 9);
  });

  test('through two points it is the straight way', () => {
    const [piece, ...more] = piecesOf({ points: POINTS.slice(0, 2) });
    expect(more).toEqual([]);
    expect(piece?.control[1]).toEqual({ x: expect.closeTo(1, 9), y: expect.closeTo(4 / 3, 9) });
  });
});

describe('closed', () => {
  test('it goes round, smooth at every point, the first too', () => {
    const pieces = piecesOf({ closed: true });
    expect(pieces).toHaveLength(5);
    expect(pieces[4]?.control[3]).toEqual(POINTS[0]);
    expectSmooth(pieces, true);
  });

  test('three points are enough, two are an open curve', () => {
    const three = piecesOf({ points: POINTS.slice(0, 3), closed: true });
    expect(three).toHaveLength(3);
    expectSmooth(three, true);
    expect(piecesOf({ points: POINTS.slice(0, 2), closed: true })).toHaveLength(1);
  });

  test('one point is no curve', () => {
    expect(() => piecesOf({ points: POINTS.slice(0, 1) })).toThrow('two points');
  });
});

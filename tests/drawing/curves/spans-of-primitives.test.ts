/** Primitives in lines and arcs of at most half a turn. */
import { describe, expect, test } from 'vitest';
import type { ConicPrimitive, CurvePrimitive } from '#drawing/curves/curve-primitive.ts';
import { spansOfPrimitives } from '#drawing/curves/spans-of-primitives.ts';
import { MOST_SPANS_A_CURVE } from '#drawing/drawing-limits.ts';
import { type ArcSpan, distanceToSpan, lineSpan } from '#geometry/span.ts';
import { CURVE_FIT } from '#geometry/tolerances.ts';

const near = (x: number, y: number) => ({ x: expect.closeTo(x, 9), y: expect.closeTo(y, 9) });
const spansOf = (...primitives: readonly CurvePrimitive[]) => spansOfPrimitives(primitives) ?? [];
const arcsOf = (...primitives: readonly CurvePrimitive[]) =>
  spansOf(...primitives).filter((span): span is ArcSpan => span.kind === 'arc');

describe('a bulge', () => {
  const bulge = (value: number, length = 8): CurvePrimitive => ({
    kind: 'bulge',
    start: { x: 1, y: 2 },
    end: { x: 1 + length, y: 2 },
    bulge: value,
  });

  test('of up to 1 is one arc', () => {
    // A height of half the bulge times the chord: 2 of 8, so R 5 about (5, 5).
    expect(spansOf(bulge(0.5))).toEqual([
      {
        kind: 'arc',
        start: { x: 1, y: 2 },
        end: { x: 9, y: 2 },
        center: near(5, 5),
        radius: expect.closeTo(5, 9),
        sweep: expect.closeTo(4 * Math.atan(0.5), 9),
      },
    ]);
    expect(spansOf(bulge(-1))).toMatchObject([{ radius: 4, sweep: expect.closeTo(-Math.PI, 9) }]);
  });

  test.each([2, -2])('of %d is two, through the far point of R 5', (value) => {
    const side = Math.sign(value);
    const arcs = arcsOf(bulge(value));
    expect(arcs).toHaveLength(2);
    for (const arc of arcs) {
      expect(arc).toMatchObject({ radius: expect.closeTo(5, 9), center: near(5, 2 - 3 * side) });
      expect(arc.sweep).toBeCloseTo(2 * Math.atan(2) * side, 9);
    }
    expect([arcs[0]?.end, arcs[1]?.start]).toEqual([near(5, 2 - 8 * side), near(5, 2 - 8 * side)]);
    expect([arcs[0]?.start, arcs[1]?.end]).toEqual([
      { x: 1, y: 2 },
      { x: 9, y: 2 },
    ]);
  });

  test('of 2 on a slanting chord of 10 reaches 10 to its right', () => {
    const [first, second] = arcsOf({ kind: 'bulge', start: { x: 1, y: 2 }, end: { x: 7, y: 10 }, bulge: 2 });
    expect([first?.end, second?.start]).toEqual([near(12, 0), near(12, 0)]);
  });

  test('that stands no more than a nanometre over its chord is a line', () => {
    expect(spansOf(bulge(2.4e-7))).toEqual([lineSpan({ x: 1, y: 2 }, { x: 9, y: 2 })]);
    expect(spansOf(bulge(-2.6e-7))).toMatchObject([{ kind: 'arc' }]);
    expect(spansOf(bulge(-2.4e-7))).toMatchObject([{ kind: 'line' }]);
  });
});

describe('a round conic', () => {
  const round = (from: number, sweep: number, hand: 1 | -1 = 1): ConicPrimitive => ({
    kind: 'conic',
    center: { x: 2, y: -3 },
    across: { x: 3, y: 4 },
    up: { x: -4 * hand, y: 3 * hand },
    from,
    sweep,
  });
  const turn = Math.atan2(4, 3);
  const at = (angle: number) => near(2 + 5 * Math.cos(angle), -3 + 5 * Math.sin(angle));

  test('all round is two halves that end exactly where they began', () => {
    const [first, second, ...more] = arcsOf(round(0.3, 2 * Math.PI));
    expect(more).toEqual([]);
    expect([first?.sweep, second?.sweep]).toEqual([Math.PI, Math.PI]);
    expect([first?.start, first?.end, second?.start]).toEqual([
      at(turn + 0.3),
      at(turn + 0.3 + Math.PI),
      at(turn + 0.3 + Math.PI),
    ]);
    expect(second?.end).toBe(first?.start);
    expect([first?.radius, first?.center]).toEqual([5, { x: 2, y: -3 }]);
  });

  test('half a turn is one arc, three quarters are two', () => {
    expect(arcsOf(round(0.3, -Math.PI)).map(({ sweep }) => sweep)).toEqual([-Math.PI]);
    expect(arcsOf(round(0.3, 1.5 * Math.PI)).map(({ sweep }) => sweep)).toEqual([
      0.75 * Math.PI,
      0.75 * Math.PI,
    ]);
  });

  test('whose axes were mirrored turns the other way', () => {
    const [arc, ...more] = arcsOf(round(0.3, 1.2, -1));
    expect(more).toEqual([]);
    expect(arc?.sweep).toBe(-1.2);
    expect([arc?.start, arc?.end]).toEqual([at(turn - 0.3), at(turn - 1.5)]);
  });

  test('between given points it keeps them', () => {
    const ends = { start: { x: 5, y: 1 }, end: { x: -2, y: 0 } };
    const arcs = arcsOf({ ...round(0, Math.PI / 2), ends });
    expect([arcs[0]?.start, arcs.at(-1)?.end]).toEqual([ends.start, ends.end]);
  });
});

describe('an ellipse of 9 by 4', () => {
  const ellipse = (sweep: number): ConicPrimitive => ({
    kind: 'conic',
    center: { x: 1, y: 2 },
    across: { x: 9, y: 0 },
    up: { x: 0, y: 4 },
    from: 0.4,
    sweep,
  });
  const at = (t: number) => ({ x: 1 + 9 * Math.cos(t), y: 2 + 4 * Math.sin(t) });

  test('all round is closed, to the bit; a part of it is not', () => {
    const whole = spansOf(ellipse(2 * Math.PI));
    expect(whole.at(-1)?.end).toEqual(whole[0]?.start);
    const part = spansOf(ellipse(1.3));
    expect([part[0]?.start, part.at(-1)?.end]).toEqual([
      near(at(0.4).x, at(0.4).y),
      near(at(1.7).x, at(1.7).y),
    ]);
    for (const t of [0.6, 0.9, 1.3]) {
      expect(Math.min(...part.map((span) => distanceToSpan(span, at(t))))).toBeLessThanOrEqual(CURVE_FIT);
    }
  });

  test('between given points it keeps them', () => {
    const ends = { start: at(0.4), end: { x: at(1.7).x + 1e-7, y: at(1.7).y - 2e-7 } };
    const part = spansOf({ ...ellipse(1.3), ends });
    expect([part[0]?.start, part.at(-1)?.end]).toEqual([ends.start, ends.end]);
  });
});

describe('a chain', () => {
  const line = (x0: number, y0: number, x1: number, y1: number): CurvePrimitive => ({
    kind: 'line',
    start: { x: x0, y: y0 },
    end: { x: x1, y: y1 },
  });
  const spline = (...points: readonly (readonly [number, number])[]): CurvePrimitive => ({
    kind: 'spline',
    degree: 1,
    knots: [0, ...points.map((_, n) => n), points.length - 1],
    points: points.map(([x, y]) => ({ x, y })),
    weights: undefined,
  });

  test('of lines is those lines', () => {
    expect(spansOf(line(0, 0, 5, 1), line(5, 1, 5, 4))).toEqual([
      lineSpan({ x: 0, y: 0 }, { x: 5, y: 1 }),
      lineSpan({ x: 5, y: 1 }, { x: 5, y: 4 }),
    ]);
    expect(spansOf(line(0, 0, 5, 1))).toEqual([lineSpan({ x: 0, y: 0 }, { x: 5, y: 1 })]);
  });

  test('with a spline that ends 0.000001 mm from where it began is closed, others are left', () => {
    const bent = [
      [5, 1],
      [4, 7],
      [1e-6, 0],
    ] as const;
    expect(spansOf(line(0, 0, 5, 1), spline(...bent)).at(-1)?.end).toEqual({ x: 0, y: 0 });
    expect(spansOf(spline([0, 0], ...bent)).at(-1)?.end).toEqual({ x: 0, y: 0 });
    expect(spansOf(line(0, 0, 5, 1), line(5, 1, 4, 7), line(4, 7, 1e-6, 0)).at(-1)?.end).toEqual({
      x: 1e-6,
      y: 0,
    });
    expect(spansOf(spline([0, 0], [5, 1], [4, 7], [0.1, 0])).at(-1)?.end).toEqual({ x: 0.1, y: 0 });
  });

  test('with a curve that takes too many arcs is none', () => {
    const zigzag = Array.from({ length: MOST_SPANS_A_CURVE + 2 }, (_, n) => [n, (n % 2) * 3] as const);
    expect(spansOfPrimitives([line(-5, 0, 0, 0), spline(...zigzag)])).toBeUndefined();
  });
});

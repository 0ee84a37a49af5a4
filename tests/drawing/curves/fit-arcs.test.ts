/**
 * Ellipses and splines in arcs: never further off than 0.001 mm in either direction, tangent where the curve is smooth, and no more
 * arcs than it takes. Ellipse points come from its own equation, spline points from the definition of B-splines (Cox and de Boor's recursion
 * for the basis functions, The NURBS Book, eq. 2.5 and 4.1), not from the evaluation under test.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { SplinePrimitive } from '#drawing/curves/curve-primitive.ts';
import { splineThrough } from '#drawing/curves/spline-through.ts';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import { ROUND_SPLINE, spline } from '#fixtures/tricky-splines.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, pointAlong, type Span, tangentAlong } from '#geometry/span.ts';
import { CURVE_FIT } from '#geometry/tolerances.ts';
import { block, bytesOf, circle, drawingText, entity, insert } from '#support/drawings/raw-drawing.ts';

function spansOf(text: string): readonly Span[] {
  const { curves, findings } = readDrawing(bytesOf(drawingText({ entities: text })), { unit: 'mm' });
  expect(findings).toEqual([]);
  expect(curves.length).toBe(1);
  return curves[0]?.spans ?? [];
}

function distanceTo(spans: readonly Span[], point: Point): number {
  return spans.reduce(
    (least, span) => Math.min(least, distanceToSpan(span, point)),
    Number.POSITIVE_INFINITY,
  );
}

/** Largest angle between one span's end and the next one's start, radians. */
function worstCorner(spans: readonly Span[]): number {
  let worst = 0;
  for (const [n, span] of spans.entries()) {
    const next = spans[n + 1];
    if (next === undefined) continue;
    const a = tangentAlong(span, 1);
    const b = tangentAlong(next, 0);
    worst = Math.max(worst, Math.abs(Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y)));
  }
  return worst;
}

test('ellipses of every size and slimness: both ways within CURVE_FIT, and smooth', {
  tags: ['long'],
}, () => {
  const axis = fc.integer({ min: 1, max: 5000 }).map((n) => n / 10);
  fc.assert(
    fc.property(
      axis,
      fc.integer({ min: 20, max: 1000 }),
      fc.integer({ min: 0, max: 359 }),
      (a, permille, turnDeg) => {
        const ratio = permille / 1000;
        const turn = (turnDeg * Math.PI) / 180;
        const [mx, my] = [a * Math.cos(turn), a * Math.sin(turn)];
        const spans = spansOf(
          entity('ELLIPSE', [10, 7], [20, -3], [11, mx], [21, my], [40, ratio], [41, 0], [42, 2 * Math.PI]),
        );
        const at = (t: number): Point => ({
          x: 7 + mx * Math.cos(t) - my * ratio * Math.sin(t),
          y: -3 + my * Math.cos(t) + mx * ratio * Math.sin(t),
        });
        let off = 0;
        for (let n = 0; n < 300; n++) off = Math.max(off, distanceTo(spans, at(n * 0.0314159 * Math.SQRT2)));
        expect(off).toBeLessThanOrEqual(CURVE_FIT);
        // The way back: the implicit equation, its error divided by its gradient.
        for (const span of spans) {
          for (const share of [0.2, 0.5, 0.8]) {
            const { x, y } = pointAlong(span, share);
            const u = ((x - 7) * Math.cos(turn) + (y + 3) * Math.sin(turn)) / a;
            const v = (-(x - 7) * Math.sin(turn) + (y + 3) * Math.cos(turn)) / (a * ratio);
            const gradient = 2 * Math.hypot(u / a, v / (a * ratio));
            expect(Math.abs(u * u + v * v - 1) / gradient).toBeLessThanOrEqual(CURVE_FIT * 1.05);
          }
        }
        expect(worstCorner(spans)).toBeLessThan(1e-3);
      },
    ),
    { numRuns: 60 },
  );
});

test('an ellipse of 60 by 25 takes at most 112 arcs', () => {
  // 49 arcs follow it within a micrometre when they need not be tangent; tangent pairs take about twice as many.
  const spans = spansOf(
    entity('ELLIPSE', [10, 0], [20, 0], [11, 60], [21, 0], [40, 25 / 60], [41, 0], [42, 2 * Math.PI]),
  );
  expect(spans.length).toBeLessThanOrEqual(112);
});

test('a weighted spline that is a circle comes out as two half circles', () => {
  const spans = spansOf(spline(ROUND_SPLINE));
  expect(spans.map(({ kind }) => kind)).toEqual(['arc', 'arc']);
  for (const span of spans) {
    if (span.kind !== 'arc') continue;
    expect(span.radius).toBeCloseTo(5, 6);
    expect(Math.hypot(span.center.x - 5, span.center.y - 5)).toBeLessThan(1e-6);
  }
});

test('a circle in a block scaled alike stays two arcs, however it is nested and turned', () => {
  const text = drawingText({
    blocks: block('A', circle(1, 2, 3)) + block('B', insert('A', 4, 5, [41, 0.3], [42, -0.3], [50, 17])),
    entities: insert('B', 6, 7, [41, -1.7], [42, 1.7], [50, 71]),
  });
  const spans = readDrawing(bytesOf(text)).curves[0]?.spans ?? [];
  expect(spans.map((span) => span.kind === 'arc' && Math.abs(span.radius - 3 * 0.3 * 1.7) < 1e-12)).toEqual([
    true,
    true,
  ]);
});

test('splines of degree 2 to 5, weighted: both ways within CURVE_FIT', { tags: ['long'] }, () => {
  const value = fc.integer({ min: -2000, max: 2000 }).map((n) => n / 10);
  const points = fc.array(fc.tuple(value, value), { minLength: 6, maxLength: 10 });
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 5 }), points, fc.boolean(), (degree, list, weighted) => {
      const inner = list.length - degree - 1;
      const knots = [
        ...Array(degree + 1).fill(0),
        ...Array.from({ length: inner }, (_, n) => n + 1),
        ...Array(degree + 1).fill(inner + 1),
      ] as number[];
      const weights = weighted ? list.map((_, n) => 0.4 + (n % 4)) : [];
      const spans = spansOf(spline({ degree, knots, points: list, weights }));
      for (let n = 0; n <= 200; n++) {
        const t = ((inner + 1) * n) / 200;
        expect(distanceTo(spans, byBasis(t, degree, knots, list, weights))).toBeLessThanOrEqual(CURVE_FIT);
      }
    }),
    { numRuns: 15, endOnFailure: true },
  );
});

/** A spline's point as the weighted sum of its control points by the recursion that defines basis functions. */
function byBasis(
  t: number,
  degree: number,
  knots: readonly number[],
  points: readonly (readonly [number, number])[],
  weights: readonly number[],
): Point {
  const knot = (n: number): number => knots[n] ?? Number.NaN;
  const last = knot(points.length);
  const basis = (i: number, p: number): number => {
    if (p === 0)
      return (knot(i) <= t && t < knot(i + 1)) || (t === last && knot(i) < last && knot(i + 1) === last)
        ? 1
        : 0;
    const left = knot(i + p) - knot(i);
    const right = knot(i + p + 1) - knot(i + 1);
    return (
      (left === 0 ? 0 : ((t - knot(i)) / left) * basis(i, p - 1)) +
      (right === 0 ? 0 : ((knot(i + p + 1) - t) / right) * basis(i + 1, p - 1))
    );
  };
  let [x, y, w] = [0, 0, 0];
  for (const [i, [px, py]] of points.entries()) {
    const share = basis(i, degree) * (weights[i] ?? 1);
    x += px * share;
    y += py * share;
    w += share;
  }
  return { x: x / w, y: y / w };
}

test('a spline with a cusp and one that turns back end in time and stay on the curve', () => {
  const knots = [0, 0, 0, 0, 1, 1, 1, 1];
  for (const points of [
    [
      [0, 0],
      [10, 10],
      [0, 10],
      [10, 0],
    ],
    [
      [0, 0],
      [30, 0],
      [-20, 0],
      [10, 0],
    ],
    [
      [0, 0],
      [0, 0],
      [0, 0],
      [10, 5],
    ],
    [
      [0, 0],
      [10, 10],
      [10, 10],
      [20, 0],
    ],
  ] as const) {
    const spans = spansOf(spline({ knots, points }));
    for (let n = 0; n <= 50; n++)
      expect(distanceTo(spans, byBasis(n / 50, 3, knots, points, []))).toBeLessThanOrEqual(CURVE_FIT);
  }
});

test('through points of a parabola, with its end directions: nearer to it with every halving', () => {
  const worst = [8, 16].map((count) => {
    const points = Array.from({ length: count + 1 }, (_, n) => ({
      x: (n * 20) / count,
      y: ((n * 20) / count) ** 2 / 40,
    }));
    const diagonal = Math.SQRT1_2;
    const curve = splineThrough({
      points,
      closed: false,
      startDirection: { x: 1, y: 0 },
      endDirection: { x: diagonal, y: diagonal },
    });
    return Math.max(...sample(curve).map(({ x, y }) => Math.abs(y - (x * x) / 40)));
  });
  // Cubic interpolation errs with the fourth power of the spacing (de Boor, chapter V); chord-length layout costs little of it.
  expect(worst[0]).toBeLessThan(2e-3);
  expect((worst[0] ?? 0) / (worst[1] ?? 1)).toBeGreaterThan(8);
});

test('through points of a circle, closed: round to a micrometre, and smooth where it closes', () => {
  const points = Array.from({ length: 24 }, (_, n) => ({
    x: 10 * Math.cos((n * Math.PI) / 12),
    y: 10 * Math.sin((n * Math.PI) / 12),
  }));
  const curve = splineThrough({ points, closed: true, startDirection: undefined, endDirection: undefined });
  for (const { x, y } of sample(curve)) expect(Math.abs(Math.hypot(x, y) - 10)).toBeLessThan(1e-3);
  const [second] = curve.points.slice(1);
  const beforeLast = curve.points.at(-2);
  expect(Math.abs((second?.x ?? 0) - 10)).toBeLessThan(1e-9);
  expect((second?.y ?? 0) + (beforeLast?.y ?? 1)).toBeCloseTo(0, 9);
});

test('through points without end directions: no bending at the ends', () => {
  const curve = splineThrough({
    points: [
      { x: 0, y: 0 },
      { x: 3, y: 4 },
      { x: 9, y: 4 },
    ],
    closed: false,
    startDirection: undefined,
    endDirection: undefined,
  });
  const [a, b, c] = curve.points;
  // The second derivative of a cubic at its start is 6 (a − 2b + c) over the step squared.
  expect((a?.x ?? 1) - 2 * (b?.x ?? 1) + (c?.x ?? 1)).toBeCloseTo(0, 12);
  expect((a?.y ?? 1) - 2 * (b?.y ?? 1) + (c?.y ?? 1)).toBeCloseTo(0, 12);
});

function sample({ points }: SplinePrimitive): Point[] {
  const found: Point[] = [];
  for (let n = 0; n + 3 < points.length; n += 3) {
    const [a, b, c, d] = points.slice(n, n + 4);
    if (a === undefined || b === undefined || c === undefined || d === undefined) continue;
    for (let step = 0; step <= 10; step++) {
      const t = step / 10;
      const s = 1 - t;
      const mix = (k: 'x' | 'y'): number =>
        a[k] * s ** 3 + 3 * b[k] * s * s * t + 3 * c[k] * s * t * t + d[k] * t ** 3;
      found.push({ x: mix('x'), y: mix('y') });
    }
  }
  return found;
}

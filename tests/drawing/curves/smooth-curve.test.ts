/** Ellipses and splines as curves: places by their own formulas, directions by their derivatives. */
import { describe, expect, test } from 'vitest';
import { conicCurve, type SmoothCurve, splineCurve } from '#drawing/curves/smooth-curve.ts';

const near = (x: number, y: number) => ({ x: expect.closeTo(x, 9), y: expect.closeTo(y, 9) });

/** The derivative by each segment's share agrees with differences of places. */
function expectDerivatives(curve: SmoothCurve): void {
  for (let segment = 0; segment < curve.segments; segment++) {
    for (const share of [0.1, 0.45, 0.8]) {
      const [before, after] = [curve.at(segment, share - 1e-5), curve.at(segment, share + 1e-5)];
      const { dx, dy } = curve.at(segment, share);
      expect(dx).toBeCloseTo((after.x - before.x) / 2e-5, 5);
      expect(dy).toBeCloseTo((after.y - before.y) / 2e-5, 5);
    }
  }
}

describe('a leaning ellipse by two half diameters that are not its axes', () => {
  const center = { x: 1, y: -2 };
  const [across, up] = [
    { x: 5, y: 1 },
    { x: 2, y: 3 },
  ];
  const curve = (from: number, sweep: number) =>
    conicCurve({ kind: 'conic', center, across, up, from, sweep });
  const at = (t: number) =>
    near(
      center.x + across.x * Math.cos(t) + up.x * Math.sin(t),
      center.y + across.y * Math.cos(t) + up.y * Math.sin(t),
    );

  test.each([
    [0.3, 2 * Math.PI],
    [2.9, -2 * Math.PI],
    [-1.1, 2.5],
    [-1.1, -2.5],
  ])('from %f by %f it begins and ends there, and hangs together', (from, sweep) => {
    const whole = curve(from, sweep);
    expect(whole.at(0, 0)).toMatchObject(at(from));
    expect(whole.at(whole.segments - 1, 1)).toMatchObject(at(from + sweep));
    for (let n = 1; n < whole.segments; n++) {
      const { x, y } = whole.at(n - 1, 1);
      expect(whole.at(n, 0)).toMatchObject(near(x, y));
    }
    expectDerivatives(whole);
  });

  test('is broken at its vertices, where it runs square to the way to its centre', () => {
    const whole = curve(0.3, 2 * Math.PI);
    expect(whole.segments).toBe(5);
    for (let n = 1; n < whole.segments; n++) {
      const { x, y, dx, dy } = whole.at(n, 0);
      expect((x - center.x) * dx + (y - center.y) * dy).toBeCloseTo(0, 9);
    }
  });

  test('from one vertex to the next it is one piece', () => {
    const axis = Math.atan2(2 * (5 * 2 + 1 * 3), 26 - 13) / 2;
    expect(curve(axis, Math.PI / 2).segments).toBe(1);
    expect(curve(axis + Math.PI / 2, -Math.PI / 2).segments).toBe(1);
    expect(curve(axis - 0.1, Math.PI / 2).segments).toBe(2);
    expect(curve(axis, 2 * Math.PI).segments).toBe(4);
  });
});

describe('a spline', () => {
  const points = [
    { x: 1, y: 2 },
    { x: 3, y: 9 },
    { x: 8, y: 7 },
    { x: 11, y: -1 },
  ];

  test('of one piece follows Bernstein’s polynomials', () => {
    const curve = splineCurve({
      kind: 'spline',
      degree: 3,
      knots: [4, 4, 4, 4, 6.5, 6.5, 6.5, 6.5],
      points,
      weights: undefined,
    });
    expect(curve.segments).toBe(1);
    for (const t of [0, 0.2, 0.7, 1]) {
      const shares = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
      const sum = (axis: 'x' | 'y') =>
        points.reduce((all, point, n) => all + point[axis] * (shares[n] ?? 0), 0);
      expect(curve.at(0, t)).toMatchObject(near(sum('x'), sum('y')));
    }
    expectDerivatives(curve);
    // Three times the first and the last side of its polygon.
    expect(curve.at(0, 0)).toMatchObject({ dx: expect.closeTo(6, 9), dy: expect.closeTo(21, 9) });
    expect(curve.at(0, 1)).toMatchObject({ dx: expect.closeTo(9, 9), dy: expect.closeTo(-24, 9) });
  });

  test('with weights of 1, √½ and 1 on a corner is a quarter of R 6', () => {
    const curve = splineCurve({
      kind: 'spline',
      degree: 2,
      knots: [0, 0, 0, 1, 1, 1],
      points: [
        { x: 8, y: 3 },
        { x: 8, y: 9 },
        { x: 2, y: 9 },
      ],
      weights: [1, Math.SQRT1_2, 1],
    });
    for (const t of [0, 0.3, 0.5, 0.85, 1]) {
      const { x, y, dx, dy } = curve.at(0, t);
      expect(Math.hypot(x - 2, y - 3)).toBeCloseTo(6, 9);
      expect((x - 2) * dx + (y - 3) * dy).toBeCloseTo(0, 9);
    }
    expectDerivatives(curve);
  });

  test('has a piece for each two knots that differ, unevenly spaced too', () => {
    const curve = splineCurve({
      kind: 'spline',
      degree: 2,
      knots: [0, 0, 0, 1, 1, 3.5, 4, 4, 4],
      points: [...points, { x: 15, y: 3 }, { x: 14, y: 6 }],
      weights: [1, 2, 0.5, 1.5, 1, 0.8],
    });
    expect(curve.segments).toBe(3);
    expect(curve.at(0, 0)).toMatchObject(near(1, 2));
    expect(curve.at(2, 1)).toMatchObject(near(14, 6));
    // At a double knot a curve of degree 2 passes through its control point.
    expect(curve.at(0, 1)).toMatchObject(near(8, 7));
    expect(curve.at(1, 0)).toMatchObject(near(8, 7));
    expectDerivatives(curve);
  });
});

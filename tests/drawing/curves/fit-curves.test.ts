/** Curves given by their own formulas, put into arcs: each sample judged by the formula, ends and directions by its derivative. */
import { describe, expect, test } from 'vitest';
import { fitArcs } from '#drawing/curves/fit-arcs.ts';
import type { CurvePoint, SmoothCurve } from '#drawing/curves/smooth-curve.ts';
import {
  distanceToSpan,
  lineSpan,
  pointAlong,
  type Span,
  spansLength,
  tangentAlong,
} from '#geometry/span.ts';
import { CURVE_FIT } from '#geometry/tolerances.ts';

type Formula = (t: number) => CurvePoint;

/** Each formula runs from 0 to 1. */
function curveOf(...pieces: readonly Formula[]): SmoothCurve {
  return {
    segments: pieces.length,
    at: (piece, share) => pieces[piece]?.(share) ?? { x: Number.NaN, y: 0, dx: 0, dy: 0 },
  };
}

const straight = (x0: number, y0: number, x1: number, y1: number): Formula => {
  const [dx, dy] = [x1 - x0, y1 - y0];
  return (t) => ({ x: x0 + dx * t, y: y0 + dy * t, dx, dy });
};
/** y = 7 (x / 20)² from x = 0 to 20. */
const parabola: Formula = (t) => ({ x: 20 * t, y: 7 * t * t, dx: 20, dy: 14 * t });

function fitted(curve: SmoothCurve): readonly Span[] {
  const spans = fitArcs(curve);
  if (spans === undefined) throw new Error('the curve can be followed');
  return spans;
}

/** How far samples of the curve lie from the nearest span at most. */
function farthest(curve: SmoothCurve, spans: readonly Span[]): number {
  let most = 0;
  for (let piece = 0; piece < curve.segments; piece++) {
    for (let n = 0; n <= 400; n++) {
      const at = curve.at(piece, n / 400);
      most = Math.max(most, Math.min(...spans.map((span) => distanceToSpan(span, at))));
    }
  }
  return most;
}

/** Angles between each span's end and the next one's start, radians. */
function corners(spans: readonly Span[]): number[] {
  return spans.slice(1).map((span, n) => {
    const [a, b] = [tangentAlong(spans[n] ?? span, 1), tangentAlong(span, 0)];
    return Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);
  });
}

describe('a parabola of 20 by 7', () => {
  const curve = curveOf(parabola);
  test('is followed within a micrometre, both ways, by arcs that hang together and touch', () => {
    const spans = fitted(curve);
    expect(farthest(curve, spans)).toBeLessThanOrEqual(CURVE_FIT);
    for (const span of spans) {
      for (const share of [0.15, 0.5, 0.85]) {
        const { x, y } = pointAlong(span, share);
        // Its equation's error over its gradient.
        expect(Math.abs(y - (7 * x * x) / 400) / Math.hypot(1, (7 * x) / 200)).toBeLessThanOrEqual(CURVE_FIT);
      }
    }
    spans.slice(1).forEach((span, n) => {
      expect(span.start).toEqual(spans[n]?.end);
    });
    for (const corner of corners(spans)) expect(Math.abs(corner)).toBeLessThan(1e-9);
  });

  test('keeps its ends and their directions', () => {
    const spans = fitted(curve);
    const [first, last] = [spans[0], spans.at(-1)];
    if (first === undefined || last === undefined) throw new Error('spans');
    expect(first.start).toEqual({ x: 0, y: 0 });
    expect(last.end).toEqual({ x: 20, y: 7 });
    expect(tangentAlong(first, 0).y).toBeCloseTo(0, 9);
    // Slope 14 / 20 at its end.
    expect(tangentAlong(last, 1).y / tangentAlong(last, 1).x).toBeCloseTo(0.7, 9);
  });

  test('takes as many arcs as a biarc’s error allows: twice as many for eight times the tolerance, and not many more', () => {
    const spans = fitted(curve);
    // Curvature falls from 0.035 to 0.019 / mm: by hand some 7 biarcs; the last two share what is left.
    expect(spans.length).toBeGreaterThanOrEqual(8);
    expect(spans.length).toBeLessThanOrEqual(18);
    const large = fitted(curveOf((t) => ({ x: 160 * t, y: 56 * t * t, dx: 160, dy: 112 * t })));
    expect(large.length / spans.length).toBeGreaterThan(1.6);
    expect(large.length / spans.length).toBeLessThan(2.6);
  });
});

describe('straight and round curves', () => {
  test('a line is one line, at whatever pace it is run', () => {
    const paced = curveOf((t) => ({ x: 3 + 9 * t ** 3, y: 5 - 4 * t ** 3, dx: 27 * t * t, dy: -12 * t * t }));
    expect(fitted(paced)).toEqual([lineSpan({ x: 3, y: 5 }, { x: 12, y: 1 })]);
    expect(fitted(curveOf(straight(3, 5, 7.5, 3), straight(7.5, 3, 12, 1)))).toEqual([
      lineSpan({ x: 3, y: 5 }, { x: 12, y: 1 }),
    ]);
  });

  test('one that overshoots and comes back is as long as its way', () => {
    // Along (0.8, 0.6): out to 10 at t = 0.5 and back to 7.5.
    const along = (t: number) => 40 * t * (1 - t) + 7.5 * t;
    const slope = (t: number) => 40 - 80 * t + 7.5;
    const back = curveOf((t) => ({
      x: 0.8 * along(t),
      y: 0.6 * along(t),
      dx: 0.8 * slope(t),
      dy: 0.6 * slope(t),
    }));
    const turn = 47.5 / 80;
    expect(spansLength(fitted(back))).toBeCloseTo(2 * along(turn) - 7.5, 2);
  });

  test('a circle of 270°, in three pieces, is two equal arcs', () => {
    const quarter =
      (from: number): Formula =>
      (t) => {
        const angle = from + (Math.PI / 2) * t;
        const [c, s] = [6 * Math.cos(angle), 6 * Math.sin(angle)];
        return { x: 2 + c, y: -3 + s, dx: (-s * Math.PI) / 2, dy: (c * Math.PI) / 2 };
      };
    const spans = fitted(curveOf(quarter(0.3), quarter(0.3 + Math.PI / 2), quarter(0.3 + Math.PI)));
    expect(spans).toHaveLength(2);
    for (const span of spans) {
      expect(span).toMatchObject({ kind: 'arc', radius: expect.closeTo(6, 6) });
      expect(span.kind === 'arc' && span.sweep).toBeCloseTo((3 * Math.PI) / 4, 6);
    }
  });
});

describe('corners and places without a direction', () => {
  test('a corner between two pieces stays one, at its place, and each side keeps its own direction', () => {
    // From (20, 7) on up to the left, with slope −3 at first.
    const on: Formula = (t) => ({ x: 20 - 5 * t, y: 7 + 15 * t + 2 * t * t, dx: -5, dy: 15 + 4 * t });
    const spans = fitted(curveOf(parabola, on));
    const at = spans.findIndex(({ start }) => start.x === 20 && start.y === 7);
    expect(at).toBeGreaterThan(0);
    corners(spans).forEach((corner, n) => {
      if (n + 1 !== at) expect(Math.abs(corner)).toBeLessThan(1e-9);
    });
    const turned = Math.atan2(15, -5) - Math.atan2(14, 20);
    expect(corners(spans)[at - 1]).toBeCloseTo(turned, 9);
    expect(farthest(curveOf(parabola, on), spans)).toBeLessThanOrEqual(CURVE_FIT);
  });

  test('a bend of less than 0.1 mrad between two pieces is none', () => {
    const bent = (slope: number) =>
      fitted(curveOf(straight(0, 0, 0.01, 0), straight(0.01, 0, 0.02, slope * 0.01)));
    expect(bent(0.000_09)).toHaveLength(1);
    expect(bent(0.001)).toHaveLength(2);
  });

  test('at a start where the derivative vanishes the direction is towards the next places', () => {
    // x = 8 t³, y = 6 t²: it starts straight up.
    const cusp: Formula = (t) => ({ x: 8 * t ** 3, y: 6 * t * t, dx: 24 * t * t, dy: 12 * t });
    const spans = fitted(curveOf(cusp));
    expect(farthest(curveOf(cusp), spans)).toBeLessThanOrEqual(CURVE_FIT);
    const [first] = spans;
    if (first === undefined) throw new Error('spans');
    expect(tangentAlong(first, 0).y).toBeCloseTo(1, 3);
    const back = fitted(
      curveOf((t) => {
        const { x, y, dx, dy } = cusp(1 - t);
        return { x, y, dx: -dx, dy: -dy };
      }),
    );
    const last = back.at(-1);
    if (last === undefined) throw new Error('spans');
    expect(tangentAlong(last, 1).y).toBeCloseTo(-1, 3);
  });

  test('a piece that stands still adds nothing, and counts as tried in vain', () => {
    const still: Formula = () => ({ x: 20, y: 7, dx: 0, dy: 0 });
    const effort = { failed: 3 };
    const spans = fitArcs(curveOf(straight(0, 0, 20, 7), still, straight(20, 7, 20, 30)), effort);
    expect(spans).toEqual([
      lineSpan({ x: 0, y: 0 }, { x: 20, y: 7 }),
      lineSpan({ x: 20, y: 7 }, { x: 20, y: 30 }),
    ]);
    expect(effort.failed).toBeGreaterThan(3);
  });
});

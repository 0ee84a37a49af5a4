/** Ellipses and splines as one thing: a chain of smooth segments that gives point and direction anywhere. What `fit-arcs.ts` fits. */

import { itemAt } from '#geometry/assert.ts';
import { WHOLE_TURN } from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import { cos as cosine, sin as sine } from '#maths/sine.ts';
import type { ConicPrimitive, SplinePrimitive } from './curve-primitive.ts';

/** A point and the derivative there. */
export interface CurvePoint {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

export interface SmoothCurve {
  readonly segments: number;
  /** At a share (0 to 1) of a segment; at its ends, as seen from inside it. */
  at(segment: number, share: number): CurvePoint;
}

/** Broken at the ends of the principal axes, where curvature is at its most and least, so that the fit is as symmetric as the ellipse. */
export function conicCurve({ center, across, up, from, sweep }: ConicPrimitive): SmoothCurve {
  const squareA = across.x * across.x + across.y * across.y;
  const squareB = up.x * up.x + up.y * up.y;
  const axis = atan2(2 * (across.x * up.x + across.y * up.y), squareA - squareB) / 2;
  const low = Math.min(from, from + sweep);
  const high = Math.max(from, from + sweep);
  const quarter = Math.PI / 2;
  const breaks = [low];
  for (let n = Math.ceil((low - axis) / quarter); axis + n * quarter < high; n++) {
    const angle = axis + n * quarter;
    if (angle - itemAt(breaks, breaks.length - 1) > WHOLE_TURN && high - angle > WHOLE_TURN)
      breaks.push(angle);
  }
  breaks.push(high);
  if (sweep < 0) breaks.reverse();
  return {
    segments: breaks.length - 1,
    at: (segment, share) => {
      const start = itemAt(breaks, segment);
      const span = itemAt(breaks, segment + 1) - start;
      const cos = cosine(start + span * share);
      const sin = sine(start + span * share);
      return {
        x: center.x + across.x * cos + up.x * sin,
        y: center.y + across.y * cos + up.y * sin,
        dx: (up.x * cos - across.x * sin) * span,
        dy: (up.y * cos - across.y * sin) * span,
      };
    },
  };
}

/** One segment for each knot span that has a length. */
export function splineCurve(spline: SplinePrimitive): SmoothCurve {
  const { degree, knots, points } = spline;
  const spans: number[] = [];
  for (let k = degree; k < points.length; k++) if (itemAt(knots, k) < itemAt(knots, k + 1)) spans.push(k);
  return {
    segments: spans.length,
    at: (segment, share) => evaluate(spline, itemAt(spans, segment), share),
  };
}

/**
 * De Boor's algorithm in homogeneous coordinates on knot span k (de Boor, A Practical Guide to Splines, chapter X; for weights,
 * Piegl and Tiller, The NURBS Book, chapter 4). The last step's two points also give the derivative.
 */
function evaluate({ degree, knots, points, weights }: SplinePrimitive, k: number, share: number): CurvePoint {
  const low = itemAt(knots, k);
  const width = itemAt(knots, k + 1) - low;
  const t = low + width * share;
  const x: number[] = [];
  const y: number[] = [];
  const w: number[] = [];
  for (let j = 0; j <= degree; j++) {
    const point = itemAt(points, k - degree + j);
    const weight = weights === undefined ? 1 : itemAt(weights, k - degree + j);
    x.push(point.x * weight);
    y.push(point.y * weight);
    w.push(weight);
  }
  const derivative = { x: 0, y: 0, w: 0 };
  for (let level = 1; level <= degree; level++) {
    if (level === degree) {
      const rate = degree / width;
      derivative.x = (itemAt(x, degree) - itemAt(x, degree - 1)) * rate;
      derivative.y = (itemAt(y, degree) - itemAt(y, degree - 1)) * rate;
      derivative.w = (itemAt(w, degree) - itemAt(w, degree - 1)) * rate;
    }
    for (let j = degree; j >= level; j--) {
      const from = itemAt(knots, k - degree + j);
      const alpha = (t - from) / (itemAt(knots, k + 1 + j - level) - from);
      x[j] = itemAt(x, j - 1) * (1 - alpha) + itemAt(x, j) * alpha;
      y[j] = itemAt(y, j - 1) * (1 - alpha) + itemAt(y, j) * alpha;
      w[j] = itemAt(w, j - 1) * (1 - alpha) + itemAt(w, j) * alpha;
    }
  }
  const weight = itemAt(w, degree);
  const px = itemAt(x, degree) / weight;
  const py = itemAt(y, degree) / weight;
  return {
    x: px,
    y: py,
    dx: ((derivative.x - px * derivative.w) / weight) * width,
    dy: ((derivative.y - py * derivative.w) / weight) * width,
  };
}

/**
 * Features: the pieces of the openings' borders that a front spreads from. A span spreads to its right, away from the
 * opening; a convex corner spreads into a round join. All features have one shape, so that the inner loops stay fast.
 */

import { assert, itemAt } from '#geometry/assert.ts';
import { cross, dot, type Point } from '#geometry/point.ts';
import { type ArcSpan, type Loop, type Span, startAngle, tangentAlong } from '#geometry/span.ts';
import { throughEnds } from '#geometry/spans/arc-through-ends.ts';
import { CUSP, PARALLEL } from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import { hypot } from '#maths/hypot.ts';
import { cos, sin } from '#maths/sine.ts';

export interface Feature {
  readonly kind: 'line' | 'arc' | 'corner';
  /** Stage index; that of a clipping border is -1. */
  readonly stage: number;
  /** Start and end on the opening's border; the same point for a corner. */
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  /** Line: unit normal away from the opening. Arc and corner: unit direction from the centre to the middle. */
  readonly nx: number;
  readonly ny: number;
  /** Arc and corner. */
  readonly cx: number;
  readonly cy: number;
  /** 0 for a corner. */
  readonly radius: number;
  /** 1 where growing lengthens the radius, -1 where it shortens it. */
  readonly side: number;
  readonly from: number;
  readonly sweep: number;
  /** Corner: unit directions in which its sector starts and ends. */
  readonly fromX: number;
  readonly fromY: number;
  readonly toX: number;
  readonly toY: number;
  /** Cosine of half the sweep. */
  readonly cosHalf: number;
  /** Length of the source span. */
  readonly length: number;
}

/** Features of closed loops: each span, and each corner that turns away from the inside. `skip` is true of spans that another stage already covers. */
export function loopFeatures(
  loops: readonly Loop[],
  stage: number,
  skip?: (span: Span) => boolean,
): Feature[] {
  const features: Feature[] = [];
  for (const drawn of loops) {
    const loop = drawn.map(throughEnds);
    loop.forEach((span, i) => {
      const before = itemAt(loop, i === 0 ? loop.length - 1 : i - 1);
      const isSkipped = skip?.(itemAt(drawn, i)) ?? false;
      if (isSkipped && skip?.(itemAt(drawn, i === 0 ? loop.length - 1 : i - 1))) return;
      const corner = cornerFeature(before, span, stage);
      if (corner !== undefined) features.push(corner);
      if (!isSkipped) features.push(spanFeature(span, stage));
    });
  }
  return features;
}

/** Beside the middle of a line or an arc, so far outside the opening that it borders; negative: inside. mm */
export function pointBeside(
  { kind, ax, ay, bx, by, nx, ny, cx, cy, radius, side }: Feature,
  outward: number,
): [number, number] {
  if (kind === 'line') return [(ax + bx) / 2 + nx * outward, (ay + by) / 2 + ny * outward];
  return [cx + nx * (radius + side * outward), cy + ny * (radius + side * outward)];
}

const NO_SECTOR = { fromX: 0, fromY: 0, toX: 0, toY: 0 };

function spanFeature(span: Span, stage: number): Feature {
  const { start, end } = span;
  if (span.kind === 'arc') return arcFeature(span, stage);
  const length = hypot(end.x - start.x, end.y - start.y);
  assert(length > 0, 'a border has no span of length zero');
  return {
    kind: 'line',
    stage,
    ax: start.x,
    ay: start.y,
    bx: end.x,
    by: end.y,
    nx: (end.y - start.y) / length,
    ny: (start.x - end.x) / length,
    cx: 0,
    cy: 0,
    radius: 0,
    side: 0,
    from: 0,
    sweep: 0,
    ...NO_SECTOR,
    cosHalf: 0,
    length,
  };
}

function arcFeature(arc: ArcSpan, stage: number): Feature {
  const from = startAngle(arc);
  const { center, radius, sweep, start, end } = arc;
  return {
    kind: 'arc',
    stage,
    ax: start.x,
    ay: start.y,
    bx: end.x,
    by: end.y,
    nx: cos(from + sweep / 2),
    ny: sin(from + sweep / 2),
    cx: center.x,
    cy: center.y,
    radius,
    side: Math.sign(sweep),
    from,
    sweep,
    ...NO_SECTOR,
    cosHalf: cos(sweep / 2),
    length: radius * Math.abs(sweep),
  };
}

/** The corner where `before` meets `after`, when the border turns left there, so that growing needs a round join. */
function cornerFeature(before: Span, after: Span, stage: number): Feature | undefined {
  const arriving = tangentAlong(before, 1);
  const turn = turnAt(before, after);
  if (turn < PARALLEL) return undefined;
  const at: Point = after.start;
  const from = atan2(-arriving.x, arriving.y);
  return {
    kind: 'corner',
    stage,
    ax: at.x,
    ay: at.y,
    bx: at.x,
    by: at.y,
    nx: cos(from + turn / 2),
    ny: sin(from + turn / 2),
    cx: at.x,
    cy: at.y,
    radius: 0,
    side: 1,
    from,
    sweep: turn,
    fromX: cos(from),
    fromY: sin(from),
    toX: cos(from + turn),
    toY: sin(from + turn),
    cosHalf: cos(turn / 2),
    length: 0,
  };
}

/**
 * Turn from `before` to `after` in radians, left positive. Where the border turns back on itself rounding alone would say to
 * which side: it counts as a left turn, and what then spreads into the opening itself is hidden by it.
 */
function turnAt(before: Span, after: Span): number {
  const arriving = tangentAlong(before, 1);
  const leaving = tangentAlong(after, 0);
  const turn = atan2(cross(arriving, leaving), dot(arriving, leaving));
  return Math.PI - Math.abs(turn) < CUSP ? Math.abs(turn) : turn;
}

/** Whether a corner stands where the border turns back on itself: the tip of a spike of the opening, or of a notch of land. */
export function isCusp({ kind, sweep }: Feature): boolean {
  return kind === 'corner' && Math.PI - sweep < CUSP;
}

/** Squared distance from a point to a feature's source: exact. */
export function squaredDistance(feature: Feature, x: number, y: number): number {
  if (feature.kind === 'line') {
    const dx = x - feature.ax;
    const dy = y - feature.ay;
    // The unit direction is the normal turned left.
    const along = -feature.ny * dx + feature.nx * dy;
    if (along <= 0) return dx * dx + dy * dy;
    if (along >= feature.length) {
      const ex = x - feature.bx;
      const ey = y - feature.by;
      return ex * ex + ey * ey;
    }
    const across = feature.nx * dx + feature.ny * dy;
    return across * across;
  }
  if (feature.kind === 'arc') {
    const dx = x - feature.cx;
    const dy = y - feature.cy;
    const far = Math.sqrt(dx * dx + dy * dy);
    if (dx * feature.nx + dy * feature.ny >= far * feature.cosHalf) {
      const across = far - feature.radius;
      return across * across;
    }
  }
  const sx = x - feature.ax;
  const sy = y - feature.ay;
  const ex = x - feature.bx;
  const ey = y - feature.by;
  return Math.min(sx * sx + sy * sy, ex * ex + ey * ey);
}

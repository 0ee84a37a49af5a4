/**
 * The etched depth at a point from the formula alone: depth = max over openings of B + √(D² − (dist / φ)²) (M2.2, M2.6), every
 * opening and every span asked each time. No index, no feature, no shared distance: inside is the winding angle, which for an
 * arc is that of its chord and the circular segment between them.
 */
interface PlainPoint {
  readonly x: number;
  readonly y: number;
}

/** A line, or with `center` an arc of at most half a turn, counter-clockwise where `sweep` is positive. */
export interface PlainSpan {
  readonly start: PlainPoint;
  readonly end: PlainPoint;
  readonly center?: PlainPoint;
  readonly radius?: number;
  readonly sweep?: number;
}

export interface PlainOpening {
  readonly loops: readonly (readonly PlainSpan[])[];
  /** mm cut through the opening, mm it lies deep already, and the factor of that cut. */
  readonly cut: number;
  readonly base: number;
  readonly factor: number;
}

/** mm */
export function plainDepth(openings: readonly PlainOpening[], point: PlainPoint): number {
  let deepest = 0;
  for (const { loops, cut, base, factor } of openings) {
    if (cut <= 0) continue;
    const apart = isWithin(loops, point) ? 0 : Math.min(...loops.flat().map((span) => gap(span, point)));
    const square = cut * cut - (apart / factor) ** 2;
    if (square >= 0) deepest = Math.max(deepest, base + Math.sqrt(square));
  }
  return deepest;
}

export function isWithin(loops: readonly (readonly PlainSpan[])[], { x, y }: PlainPoint): boolean {
  let turned = 0;
  for (const { start, end, center, radius = 0, sweep = 0 } of loops.flat()) {
    const [ax, ay, bx, by] = [start.x - x, start.y - y, end.x - x, end.y - y];
    const chord = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    turned += chord;
    if (center === undefined) continue;
    // Between chord and arc the arc passes the point on its other side: one whole turn more, in the arc's sense.
    const isInCircle = (x - center.x) ** 2 + (y - center.y) ** 2 < radius * radius;
    if (isInCircle && chord * sweep < 0) turned += 2 * Math.PI * Math.sign(sweep);
  }
  return Math.round(turned / (2 * Math.PI)) !== 0;
}

function gap({ start, end, center, radius = 0, sweep = 0 }: PlainSpan, { x, y }: PlainPoint): number {
  if (center === undefined) {
    const [ux, uy] = [end.x - start.x, end.y - start.y];
    const share = ((x - start.x) * ux + (y - start.y) * uy) / (ux * ux + uy * uy);
    const at = Math.min(1, Math.max(0, share));
    return Math.hypot(x - start.x - at * ux, y - start.y - at * uy);
  }
  const from = Math.atan2(start.y - center.y, start.x - center.x);
  const here = Math.atan2(y - center.y, x - center.x);
  const turn = ((sweep > 0 ? here - from : from - here) + 4 * Math.PI) % (2 * Math.PI);
  if (turn <= Math.abs(sweep)) return Math.abs(Math.hypot(x - center.x, y - center.y) - radius);
  return Math.min(Math.hypot(x - start.x, y - start.y), Math.hypot(x - end.x, y - end.y));
}

/** The same part drawn another way: what a plan must not notice, but for where it then lies. */
import type { Point } from '#geometry/point.ts';
import { pointAlong, reverseSpans, type Span } from '#geometry/span.ts';
import { type Movement, moveSpan } from '#support/geometry/move-spans.ts';
import type { Dice } from './dice.ts';
import type { DrawnCurve } from './drawn-part.ts';
import type { DxfForm } from './dxf-of-curves.ts';

export interface PartVariant extends DxfForm {
  readonly name: string;
  readonly curves: readonly DrawnCurve[];
  /** From a place of the part as first drawn to its place here, mm, and back. */
  readonly placed: (point: Point) => Point;
  readonly placedBack: (span: Span) => Span;
  /** Whether it lies as first drawn, but for a shift: then its regions keep their names. */
  readonly keepsIds: boolean;
  /** What the near face was is the far one here. */
  readonly isTurnedOver?: boolean;
}

const STILL: Movement = { turn: 0, factor: 1, mirrored: false, shift: { x: 0, y: 0 } };

export function variantsOf(curves: readonly DrawnCurve[], dice: Dice): PartVariant[] {
  const far = dice.pick([10, 1000, 1e5, 8e5]);
  const shift = { x: dice.between(-far, far), y: dice.between(-far, far) };
  const odd = dice.between(0.1, 6.1);
  return [
    moved('moved', curves, { ...STILL, shift }, true),
    moved('turned by an odd angle', curves, { ...STILL, turn: odd }, false),
    moved('mirrored', curves, { ...STILL, mirrored: true }, false),
    moved('turned by 90°', curves, { ...STILL, turn: Math.PI / 2 }, false),
    inPlace('in inches', curves, { unit: 'in' }),
    inPlace('reversed', curves.map(reversed)),
    inPlace('shuffled', shuffled(curves, dice)),
    inPlace('exploded', curves, { isExploded: true }),
    inPlace(
      'split in pieces',
      curves.map((curve) => split(curve, dice)),
    ),
  ];
}

function inPlace(name: string, curves: readonly DrawnCurve[], form: Partial<DxfForm> = {}): PartVariant {
  const same = { placed: (point: Point) => point, placedBack: (span: Span) => span, keepsIds: true };
  return { name, curves, unit: 'mm', isExploded: false, ...form, ...same };
}

function moved(
  name: string,
  curves: readonly DrawnCurve[],
  movement: Movement,
  keepsIds: boolean,
): PartVariant {
  const { turn, mirrored, shift } = movement;
  const placed = (point: Point) => moveSpan({ kind: 'line', start: point, end: point }, movement).start;
  const unshift: Movement = { ...STILL, shift: { x: -shift.x, y: -shift.y } };
  // A mirroring before a turn is undone by turning the same way.
  const unturn: Movement = { ...STILL, turn: mirrored ? turn : -turn, mirrored };
  return {
    name,
    curves: curves.map((curve) => moveCurve(curve, movement, placed)),
    unit: 'mm',
    isExploded: false,
    placed,
    placedBack: (span) => moveSpan(moveSpan(span, unshift), unturn),
    keepsIds,
  };
}

export function movedCurves(curves: readonly DrawnCurve[], movement: Movement): DrawnCurve[] {
  return curves.map((curve) =>
    moveCurve(curve, movement, (at) => moveSpan({ kind: 'line', start: at, end: at }, movement).start),
  );
}

function moveCurve(curve: DrawnCurve, movement: Movement, placed: (point: Point) => Point): DrawnCurve {
  if ('loop' in curve) return { ...curve, loop: curve.loop.map((span) => moveSpan(span, movement)) };
  const { points, knots } = curve.spline;
  return { ...curve, spline: { knots, points: points.map(placed) } };
}

function reversed(curve: DrawnCurve): DrawnCurve {
  if ('loop' in curve) return { ...curve, loop: reverseSpans(curve.loop) };
  const { points, knots } = curve.spline;
  const last = knots.at(-1) ?? 0;
  const first = knots[0] ?? 0;
  return {
    ...curve,
    spline: { points: [...points].reverse(), knots: knots.map((knot) => first + last - knot).reverse() },
  };
}

/** In another order, every loop begun elsewhere. */
function shuffled(curves: readonly DrawnCurve[], dice: Dice): DrawnCurve[] {
  const ranked = curves.map((curve) => ({ curve, rank: dice.next() })).sort((a, b) => a.rank - b.rank);
  return ranked.map(({ curve }) => {
    if ('spline' in curve) return curve;
    const seam = dice.whole(0, curve.loop.length - 1);
    return { ...curve, loop: [...curve.loop.slice(seam), ...curve.loop.slice(0, seam)] };
  });
}

/** Most spans cut in two or three, as drawing programs leave them after trimming. */
function split(curve: DrawnCurve, dice: Dice): DrawnCurve {
  if ('spline' in curve) return curve;
  return {
    ...curve,
    loop: curve.loop.flatMap((span) => {
      const shares = [dice.between(0.2, 0.45), dice.between(0.55, 0.8)].filter(() => dice.chance(0.7));
      return cutAt(span, shares);
    }),
  };
}

function cutAt(span: Span, shares: readonly number[]): Span[] {
  const stops = [0, ...shares, 1];
  return stops.slice(1).map((to, i): Span => {
    const from = stops[i] ?? 0;
    const start = from === 0 ? span.start : pointAlong(span, from);
    const end = to === 1 ? span.end : pointAlong(span, to);
    return span.kind === 'line'
      ? { kind: 'line', start, end }
      : { ...span, start, end, sweep: span.sweep * (to - from) };
  });
}

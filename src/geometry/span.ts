/**
 * A span is one exact piece of a border: a straight line or a circular arc of at most half a turn.
 * A full circle is two half arcs. Every curve of a drawing becomes spans on reading, and stays spans to the end.
 */
import { atan, atan2 } from '#maths/arc-tangent.ts';
import { hypot } from '#maths/hypot.ts';
import { cos, sin } from '#maths/sine.ts';
import { tan } from '#maths/tangent.ts';
import { cross, distance, dot, type Point, pointOnCircle, scale, subtract, turnLeft } from './point.ts';

export interface LineSpan {
  readonly kind: 'line';
  readonly start: Point;
  readonly end: Point;
}

export interface ArcSpan {
  readonly kind: 'arc';
  readonly start: Point;
  readonly end: Point;
  readonly center: Point;
  readonly radius: number;
  /** Signed included angle in radians, counter-clockwise positive, 0 < |sweep| ≤ π. */
  readonly sweep: number;
}

export type Span = LineSpan | ArcSpan;

/** A closed chain of spans, each starting where the last one ends. Outer loops counter-clockwise, holes clockwise. */
export type Loop = readonly Span[];

/** A chain that may be open: a scribe line that ends on another. */
export interface Path {
  readonly closed: boolean;
  readonly spans: readonly Span[];
}

export function lineSpan(start: Point, end: Point): LineSpan {
  return { kind: 'line', start, end };
}

/** Arc from its centre and angles in radians; the sweep is signed. */
export function arcSpan(arc: { center: Point; radius: number; from: number; sweep: number }): ArcSpan {
  const { center, radius, from, sweep } = arc;
  return {
    kind: 'arc',
    start: pointOnCircle(center, radius, from),
    end: pointOnCircle(center, radius, from + sweep),
    center,
    radius,
    sweep,
  };
}

/** Arc between two points by its bulge, tan(sweep / 4), the DXF convention; a bulge of 0 gives a line. |bulge| ≤ 1. */
export function spanFromBulge(start: Point, end: Point, bulge: number): Span {
  if (bulge === 0) return lineSpan(start, end);
  const chord = subtract(end, start);
  // From sagitta = bulge · chord / 2: the centre lies on the chord's normal, (1 − b²) / (4 b) chord lengths to the left.
  const offset = (1 - bulge * bulge) / (4 * bulge);
  const normal = turnLeft(chord);
  const center = {
    x: (start.x + end.x) / 2 + normal.x * offset,
    y: (start.y + end.y) / 2 + normal.y * offset,
  };
  const radius = (hypot(chord.x, chord.y) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  return { kind: 'arc', start, end, center, radius, sweep: 4 * atan(bulge) };
}

/** tan(sweep / 4) to the span's end; 0 for a line. */
export function bulgeOf(span: Span): number {
  return span.kind === 'line' ? 0 : tan(span.sweep / 4);
}

export function reverseSpan(span: Span): Span {
  if (span.kind === 'line') return { kind: 'line', start: span.end, end: span.start };
  const { start, end, center, radius, sweep } = span;
  return { kind: 'arc', start: end, end: start, center, radius, sweep: -sweep };
}

/** The loop or chain run the other way. */
export function reverseSpans(spans: readonly Span[]): Span[] {
  return spans.map(reverseSpan).reverse();
}

export function spanLength(span: Span): number {
  return span.kind === 'line' ? distance(span.start, span.end) : span.radius * Math.abs(span.sweep);
}

/** The point at a share (0 to 1) of the span's length. */
export function pointAlong(span: Span, share: number): Point {
  if (span.kind === 'line') {
    return {
      x: span.start.x + (span.end.x - span.start.x) * share,
      y: span.start.y + (span.end.y - span.start.y) * share,
    };
  }
  return pointOnCircle(span.center, span.radius, startAngle(span) + span.sweep * share);
}

/** Angle of an arc's start seen from its centre, in radians. */
export function startAngle(arc: ArcSpan): number {
  return atan2(arc.start.y - arc.center.y, arc.start.x - arc.center.x);
}

/** Unit direction of travel at a share (0 to 1) of the span. */
export function tangentAlong(span: Span, share: number): Point {
  if (span.kind === 'line') {
    const along = subtract(span.end, span.start);
    return scale(along, 1 / hypot(along.x, along.y));
  }
  const angle = startAngle(span) + span.sweep * share;
  const side = Math.sign(span.sweep);
  return { x: -sin(angle) * side, y: cos(angle) * side };
}

/** Where on the span (share 0 to 1) the point nearest to `from` lies. */
export function nearestShare(span: Span, from: Point): number {
  if (span.kind === 'line') {
    const along = subtract(span.end, span.start);
    const share = dot(subtract(from, span.start), along) / dot(along, along);
    return Math.min(1, Math.max(0, share));
  }
  const toStart = subtract(span.start, span.center);
  const toPoint = subtract(from, span.center);
  const turned = atan2(cross(toStart, toPoint), dot(toStart, toPoint)) * Math.sign(span.sweep);
  const sweep = Math.abs(span.sweep);
  const ahead = turned < 0 ? turned + 2 * Math.PI : turned;
  if (ahead <= sweep) return ahead / sweep;
  return distance(from, span.start) <= distance(from, span.end) ? 0 : 1;
}

export function distanceToSpan(span: Span, from: Point): number {
  return distance(from, pointAlong(span, nearestShare(span, from)));
}

/** Twice the signed area between the span and a point; summed over a loop it is twice the loop's area. */
function doubleAreaFrom(point: Point, span: Span): number {
  const chord = cross(subtract(span.start, point), subtract(span.end, point));
  if (span.kind === 'line') return chord;
  return chord + span.radius * span.radius * (span.sweep - sin(span.sweep));
}

/** Signed area of a loop: counter-clockwise positive. Exact for arcs, and no less so far from the origin. */
export function loopArea(loop: Loop): number {
  const first = loop[0];
  if (first === undefined) return 0;
  let sum = 0;
  for (const span of loop) sum += doubleAreaFrom(first.start, span);
  return sum / 2;
}

/** Signed area of several loops, holes counted away. */
export function loopsArea(loops: readonly Loop[]): number {
  return loops.reduce((sum, loop) => sum + loopArea(loop), 0);
}

export function spansLength(spans: readonly Span[]): number {
  return spans.reduce((sum, span) => sum + spanLength(span), 0);
}

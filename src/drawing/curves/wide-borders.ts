/**
 * The two borders of a polyline of one width: its spans moved aside by half of it, mitred at corners as drawing programs show them,
 * bevelled where a mitre would run far out. A closed polyline has two closed borders, an open one a single outline with square ends.
 */

import { itemAt } from '#geometry/assert.ts';
import { cross, distance, dot, type Point, subtract } from '#geometry/point.ts';
import { type ArcSpan, lineSpan, reverseSpans, type Span, tangentAlong } from '#geometry/span.ts';
import { crossCarriers } from '#geometry/spans/carrier.ts';
import { SILENT_JOIN } from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';

/** Widths: a mitre may run so far out from the corner of a border. */
const LONGEST_MITRE = 4;

/** Undefined where the width does not fit the polyline: an arc of less radius, a span that would turn round. */
export function wideBorders(
  spans: readonly Span[],
  { width, closed }: { readonly width: number; readonly closed: boolean },
): Span[][] | undefined {
  const left = movedAside(spans, { by: width / 2, closed });
  const right = movedAside(spans, { by: -width / 2, closed });
  if (left === undefined || right === undefined) return undefined;
  if (closed) return [left, right];
  const back = reverseSpans(right);
  const cap = (from: readonly Span[], to: readonly Span[]): Span =>
    lineSpan(itemAt(from, from.length - 1).end, itemAt(to, 0).start);
  return [[...left, cap(left, back), ...back, cap(back, left)]];
}

interface Aside {
  /** mm to the left. */
  readonly by: number;
  readonly closed: boolean;
}

function movedAside(spans: readonly Span[], { by, closed }: Aside): Span[] | undefined {
  const moved: Span[] = [];
  for (const span of spans) {
    const aside = moveAside(span, by);
    if (aside === undefined) return undefined;
    moved.push(aside);
  }
  const count = spans.length;
  const bevels = new Map<number, Span>();
  for (let n = 0; n < (closed ? count : count - 1); n++) {
    const next = (n + 1) % count;
    const [a, b] = [itemAt(moved, n), itemAt(moved, next)];
    const corner = cornerOf(a, b, Math.abs(by));
    if (corner === undefined) bevels.set(n, lineSpan(a.end, b.start));
    else {
      const ended = ending(a, corner);
      const started = starting(n === next ? ended : b, corner);
      if (ended === undefined || started === undefined) return undefined;
      moved[n] = ended;
      moved[next] = started;
    }
  }
  return moved.flatMap((span, n) => {
    const bevel = bevels.get(n);
    return bevel === undefined ? [span] : [span, bevel];
  });
}

function moveAside(span: Span, by: number): Span | undefined {
  const aside = (at: Point, share: number): Point => {
    const along = tangentAlong(span, share);
    return { x: at.x - along.y * by, y: at.y + along.x * by };
  };
  const [start, end] = [aside(span.start, 0), aside(span.end, 1)];
  if (span.kind === 'line') return lineSpan(start, end);
  const radius = span.radius - by * Math.sign(span.sweep);
  return radius > SILENT_JOIN ? { ...span, start, end, radius } : undefined;
}

/** Where two neighbours are to meet: undefined where a bevel joins them. */
function cornerOf(a: Span, b: Span, half: number): Point | undefined {
  if (distance(a.end, b.start) <= SILENT_JOIN) return a.end;
  const middle = { x: (a.end.x + b.start.x) / 2, y: (a.end.y + b.start.y) / 2 };
  const crossing = crossCarriers(a, b, middle);
  return crossing !== undefined && distance(crossing, middle) <= 2 * LONGEST_MITRE * half
    ? crossing
    : undefined;
}

function ending(span: Span | undefined, end: Point): Span | undefined {
  return span && between(span, span.start, end);
}

function starting(span: Span | undefined, start: Point): Span | undefined {
  return span && between(span, start, span.end);
}

/** The span from one end to the other along its own carrier; undefined where it would run the other way. */
function between(span: Span, start: Point, end: Point): Span | undefined {
  if (span.kind === 'line') {
    const isForward = dot(subtract(end, start), subtract(span.end, span.start)) > 0;
    return isForward ? lineSpan(start, end) : undefined;
  }
  const sweep = sweepOf(span, start, end);
  return sweep * span.sweep > 0 ? { ...span, start, end, sweep } : undefined;
}

function sweepOf({ center, sweep }: ArcSpan, start: Point, end: Point): number {
  const [from, to] = [subtract(start, center), subtract(end, center)];
  const turned = atan2(cross(from, to), dot(from, to));
  // Nearly half a turn may come out with either sign.
  if (turned * sweep < 0 && Math.abs(sweep) > Math.PI / 2 && Math.abs(turned) > Math.PI / 2) {
    return Math.sign(sweep) * Math.PI;
  }
  return turned;
}

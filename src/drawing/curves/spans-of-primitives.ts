/** Primitives, already in millimetres, to lines and arcs. Lines and arcs keep their exact ends; ellipses and splines keep within CURVE_FIT. */

import { itemAt } from '#geometry/assert.ts';
import { distance, type Point } from '#geometry/point.ts';
import { bulgeOf, lineSpan, type Span, spanFromBulge } from '#geometry/span.ts';
import { SAME_COUNT, SILENT_JOIN, STRAIGHT } from '#geometry/tolerances.ts';
import { atan } from '#maths/arc-tangent.ts';
import { hypot } from '#maths/hypot.ts';
import { cos, sin } from '#maths/sine.ts';
import { tan } from '#maths/tangent.ts';
import { areEqualAxes } from './affine.ts';
import type { BulgePrimitive, ConicPrimitive, CurvePrimitive } from './curve-primitive.ts';
import { type FitEffort, fitArcs } from './fit-arcs.ts';
import { conicCurve, splineCurve } from './smooth-curve.ts';

/** The spans of one entity in its own order; undefined when a curve would take too many. */
export function spansOfPrimitives(
  primitives: readonly CurvePrimitive[],
  effort?: FitEffort,
): Span[] | undefined {
  if (primitives.length === 1) return spansOfPrimitive(itemAt(primitives, 0), effort);
  const spans: Span[] = [];
  for (const primitive of primitives) {
    if (primitive.kind === 'line') {
      spans.push(primitive);
      continue;
    }
    const more = spansOfPrimitive(primitive, effort);
    if (more === undefined) return undefined;
    for (const span of more) spans.push(span);
  }
  // The primitives of a polyline meet exactly; those of a spline that was split close only within SILENT_JOIN.
  return primitives.some(({ kind }) => kind === 'spline') ? closeChain(spans) : spans;
}

function spansOfPrimitive(primitive: CurvePrimitive, effort: FitEffort | undefined): Span[] | undefined {
  if (primitive.kind === 'line') return [primitive];
  if (primitive.kind === 'bulge') return bulgeSpans(primitive);
  if (primitive.kind === 'spline') return closeChain(fitArcs(splineCurve(primitive), effort));
  if (areEqualAxes(primitive.across, primitive.up)) return circleSpans(primitive);
  const spans = fitArcs(conicCurve(primitive), effort);
  if (primitive.ends !== undefined) return spans && meetEnds(spans, primitive.ends.start, primitive.ends.end);
  return Math.abs(primitive.sweep) === 2 * Math.PI ? closeChain(spans) : spans;
}

/** An arc over half a turn is cut in the middle: its far point lies b · chord / 2 to the right of the chord's middle. */
function bulgeSpans({ start, end, bulge }: BulgePrimitive): Span[] {
  const chord = distance(start, end);
  if ((Math.abs(bulge) * chord) / 2 <= STRAIGHT) return [lineSpan(start, end)];
  if (Math.abs(bulge) <= 1) return [spanFromBulge(start, end, bulge)];
  const middle = {
    x: (start.x + end.x + (end.y - start.y) * bulge) / 2,
    y: (start.y + end.y - (end.x - start.x) * bulge) / 2,
  };
  const half = tan(atan(bulge) / 2);
  return [spanFromBulge(start, middle, half), spanFromBulge(middle, end, half)];
}

/** A circle or part of one, in arcs of at most half a turn; a whole turn ends exactly where it starts. */
function circleSpans(primitive: ConicPrimitive): Span[] {
  const { center, across, up, from, sweep, ends } = primitive;
  const radius = hypot(across.x, across.y);
  const handed = across.x * up.y - across.y * up.x < 0 ? -1 : 1;
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / Math.PI - SAME_COUNT));
  const step = sweep / count;
  const pointAt = (angle: number): Point => ({
    x: center.x + across.x * cos(angle) + up.x * sin(angle),
    y: center.y + across.y * cos(angle) + up.y * sin(angle),
  });
  const first = ends?.start ?? pointAt(from);
  const last = Math.abs(sweep) === 2 * Math.PI ? first : (ends?.end ?? pointAt(from + sweep));
  const spans: Span[] = [];
  let start = first;
  for (let n = 1; n <= count; n++) {
    const end = n === count ? last : pointAt(from + step * n);
    const turned = Math.max(-Math.PI, Math.min(Math.PI, step * handed));
    spans.push({ kind: 'arc', start, end, center, radius, sweep: turned });
    start = end;
  }
  return spans;
}

/** A chain whose ends meet within SILENT_JOIN is made to meet exactly. */
function closeChain(spans: Span[] | undefined): Span[] | undefined {
  if (spans === undefined || spans.length < 2) return spans;
  const start = itemAt(spans, 0).start;
  const end = itemAt(spans, spans.length - 1).end;
  return distance(start, end) <= SILENT_JOIN ? meetEnds(spans, start, start) : spans;
}

/** The chain with its two ends put on given points, which are next to them. */
function meetEnds(spans: readonly Span[], start: Point, end: Point): Span[] {
  return spans.map((span, n) => {
    const from = n === 0 ? start : span.start;
    const to = n === spans.length - 1 ? end : span.end;
    return from === span.start && to === span.end ? span : spanFromBulge(from, to, bulgeOf(span));
  });
}

/**
 * Spans stretched by one factor in x and another in y, about the origin. Where both are the same, arcs stay what they are; else
 * an arc becomes part of an ellipse, and as few arcs as follow that within a micrometre take its place.
 */

import { cross, distance, type Point, subtract } from '#geometry/point.ts';
import { pointAlong, type Span, spanFromBulge } from '#geometry/span.ts';
import { CURVE_FIT } from '#geometry/tolerances.ts';
import { hypot } from '#maths/hypot.ts';

export interface Stretching {
  readonly x: number;
  readonly y: number;
}

/** Halvings after which an arc is as short as makes no difference. */
const MOST_HALVINGS = 8;

export function stretchPoint({ x, y }: Point, by: Stretching): Point {
  return { x: x * by.x, y: y * by.y };
}

export function stretchSpans(spans: readonly Span[], by: Stretching): Span[] {
  if (by.x === 1 && by.y === 1) return [...spans];
  return spans.flatMap((span): Span[] => {
    const ends = { start: stretchPoint(span.start, by), end: stretchPoint(span.end, by) };
    if (span.kind === 'line') return [{ kind: 'line', ...ends }];
    if (by.x !== by.y) return ellipseArcs((share) => stretchPoint(pointAlong(span, share), by), ends);
    return [{ ...span, ...ends, center: stretchPoint(span.center, by), radius: span.radius * by.x }];
  });
}

function ellipseArcs(
  at: (share: number) => Point,
  { start, end }: { readonly start: Point; readonly end: Point },
  [from, to]: readonly [number, number] = [0, 1],
  depth = 0,
): Span[] {
  const place = (quarter: number) => at(from + ((to - from) * quarter) / 4);
  const arc = spanThrough(start, place(2), end);
  const isNear = [place(1), place(2), place(3)].every((point) => awayFrom(arc, point) <= CURVE_FIT);
  if (isNear || depth === MOST_HALVINGS) return [arc];
  const [middle, half] = [place(2), (from + to) / 2];
  return [
    ...ellipseArcs(at, { start, end: middle }, [from, half], depth + 1),
    ...ellipseArcs(at, { start: middle, end }, [half, to], depth + 1),
  ];
}

/** The arc of at most half a turn from one point past another to a third: its bulge is that of the middle's height. */
function spanThrough(start: Point, middle: Point, end: Point): Span {
  const chord = subtract(end, start);
  const height = cross(subtract(middle, start), chord) / hypot(chord.x, chord.y);
  const bulge = (2 * height) / hypot(chord.x, chord.y);
  return spanFromBulge(start, end, Math.min(1, Math.max(-1, bulge)));
}

function awayFrom(span: Span, point: Point): number {
  return span.kind === 'arc' ? Math.abs(distance(point, span.center) - span.radius) : 0;
}

/**
 * Pushing a border into the area on its left, each span by its own width: the round offset as raw closed chains.
 *
 * The chains are not yet an outline: they may cross themselves. Read with winding numbers they are right: the area
 * itself counts one turn, and each strip swept by a span, and each sector swept round a corner, takes one turn away.
 * A point keeps one turn exactly when no span or corner is nearer than its width, so `positivelyWound` gives the
 * points that are clear of the whole border. (The nearest border point is inside a span, whose strip covers it, or a
 * corner that turns away from the area, whose sector covers it.)
 */

import { cross, distance, dot, type Point } from '#geometry/point.ts';
import {
  type ArcSpan,
  arcSpan,
  type Loop,
  lineSpan,
  reverseSpan,
  type Span,
  tangentAlong,
} from '#geometry/span.ts';
import { GRID, NUDGE, SAME_POINT, TURNS_BACK } from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';

/** A border span with the area on its left, and how far the area must stay clear of it; 0 leaves it where it is. */
export interface PushedSpan {
  readonly span: Span;
  readonly width: number;
}

/** Raw chains to be read by winding number, nudged, and the exact curves that the final outline can be made of. */
export interface PushedBorder {
  readonly chains: readonly Loop[];
  readonly carriers: readonly Span[];
}

/** Pushes one closed border. Spans must be in order, area on the left. */
export function pushBorder(border: readonly PushedSpan[]): PushedBorder {
  const chain: Span[] = [];
  const extra: Loop[] = [];
  const carriers: Span[] = [];
  border.forEach((current, index) => {
    const moved = shiftLeft(current.span, nudged(current.width));
    if (moved !== undefined) chain.push(moved);
    const exact = shiftLeft(current.span, current.width);
    if (exact !== undefined) carriers.push(exact);
    const next = border[(index + 1) % border.length] ?? current;
    joinCorner({ current, next, chain, extra, carriers });
  });
  return { chains: [chain, ...extra], carriers };
}

/**
 * A border span that is not part of the area's own border but still keeps the area at a distance: its strip on the
 * left and a disc round both ends, as chains that take turns away.
 */
export function pushAlone(pushed: PushedSpan): PushedBorder {
  const { span, width } = pushed;
  const all = [pushSide(pushed), pushPoint(span.start, width), pushPoint(span.end, width)];
  return { chains: all.flatMap(({ chains }) => chains), carriers: all.flatMap(({ carriers }) => carriers) };
}

/** The strip on the left of a span alone. */
export function pushSide({ span, width }: PushedSpan): PushedBorder {
  const moved = shiftLeft(span, nudged(width));
  const tip = span.kind === 'arc' ? span.center : span.end;
  const strip: Span[] = [
    reverseSpan(span),
    lineSpan(span.start, moved?.start ?? tip),
    ...(moved === undefined ? [] : [moved]),
    lineSpan(moved?.end ?? tip, span.end),
  ];
  const exact = shiftLeft(span, width);
  return { chains: [strip], carriers: exact === undefined ? [] : [exact] };
}

/** The disc round a point. */
export function pushPoint(center: Point, width: number): PushedBorder {
  return { chains: [disc(center, nudged(width))], carriers: disc(center, width) };
}

/** A border that moves at all moves a nudge farther on the grid. */
function nudged(width: number): number {
  return width === 0 ? 0 : width + NUDGE;
}

/** The span moved to its left. An arc that would pass its own centre is gone: undefined. */
export function shiftLeft(span: Span, width: number): Span | undefined {
  if (width === 0) return span;
  if (span.kind === 'line') {
    const along = tangentAlong(span, 0);
    const step = { x: -along.y * width, y: along.x * width };
    return lineSpan(
      { x: span.start.x + step.x, y: span.start.y + step.y },
      { x: span.end.x + step.x, y: span.end.y + step.y },
    );
  }
  const radius = span.radius - width * Math.sign(span.sweep);
  if (radius < GRID) return undefined;
  return scaleArc(span, radius);
}

/** The concentric arc of another radius over the same angles. */
function scaleArc(arc: ArcSpan, radius: number): ArcSpan {
  const share = radius / arc.radius;
  const from = (end: Point): Point => ({
    x: arc.center.x + (end.x - arc.center.x) * share,
    y: arc.center.y + (end.y - arc.center.y) * share,
  });
  return { ...arc, start: from(arc.start), end: from(arc.end), radius };
}

/** What fills the gap between two shifted spans at their common corner. */
function joinCorner(joint: {
  current: PushedSpan;
  next: PushedSpan;
  chain: Span[];
  extra: Loop[];
  carriers: Span[];
}): void {
  const { current, next, chain, extra, carriers } = joint;
  const corner = current.span.end;
  const from = shiftedEnd(current, 1);
  const to = shiftedEnd(next, 0);
  if (distance(from, to) < SAME_POINT) return;
  if (current.width === next.width && turnsAway(current.span, next.span)) {
    // An arc that is gone ends at its centre, short of the sector's edge on the same normal.
    const sector = [tangentAlong(current.span, 1), tangentAlong(next.span, 0)] as const;
    const round = roundCorner(corner, nudged(current.width), sector);
    if (distance(from, round.start) > SAME_POINT) chain.push(lineSpan(from, round.start));
    chain.push(round);
    if (distance(round.end, to) > SAME_POINT) chain.push(lineSpan(round.end, to));
    carriers.push(roundCorner(corner, current.width, sector));
    return;
  }
  // The corner belongs to both neighbours, so the greater width holds all round it.
  if (current.width !== next.width) {
    const far = Math.max(current.width, next.width);
    extra.push(disc(corner, nudged(far)));
    carriers.push(...disc(corner, far));
  }
  chain.push(lineSpan(from, corner), lineSpan(corner, to));
}

/** Where the shifted span starts (0) or ends (1); the centre for an arc that is gone. */
function shiftedEnd({ span, width }: PushedSpan, end: 0 | 1): Point {
  const moved = shiftLeft(span, nudged(width));
  if (moved !== undefined) return end === 0 ? moved.start : moved.end;
  return span.kind === 'arc' ? span.center : span.end;
}

/**
 * Whether the border turns right at the corner, so that the corner itself is the nearest border to a sector. A border
 * that turns back on itself, at the tip where two spans touch smoothly, counts too: on the wrong side of a tip the
 * sector takes away only what the corner's own distance forbids.
 */
function turnsAway(before: Span, after: Span): boolean {
  const arriving = tangentAlong(before, 1);
  const leaving = tangentAlong(after, 0);
  const turn = cross(arriving, leaving);
  return turn < 0 || (turn < TURNS_BACK && dot(arriving, leaving) < 0);
}

/** The point beside a corner, to the left of a direction of travel. */
function beside(corner: Point, along: Point, width: number): Point {
  return { x: corner.x - along.y * width, y: corner.y + along.x * width };
}

/** The clockwise arc round a corner, beside the directions of travel before and after it. */
export function roundCorner(corner: Point, width: number, [before, after]: readonly [Point, Point]): Span {
  const from = beside(corner, before, width);
  const to = beside(corner, after, width);
  const first = atan2(from.y - corner.y, from.x - corner.x);
  const last = atan2(to.y - corner.y, to.x - corner.x);
  const sweep = last > first ? last - first - 2 * Math.PI : last - first;
  return { kind: 'arc', start: from, end: to, center: corner, radius: width, sweep };
}

/** A full circle, clockwise: it takes one turn away. */
function disc(center: Point, radius: number): Loop {
  return [
    arcSpan({ center, radius, from: 0, sweep: -Math.PI }),
    arcSpan({ center, radius, from: -Math.PI, sweep: -Math.PI }),
  ];
}

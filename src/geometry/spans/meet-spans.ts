/**
 * Where two spans meet: ends of one on the other, crossings, and touchings. Two curves that stay closer than `SAME_PLACE`
 * over a stretch meet once in it (or, overlapping, at its ends), so that a fillet that runs into a line with rounded
 * figures meets it at their common end and nowhere else, and leaves no sliver.
 */

import { add, cross, distance, dot, type Point, pointOnCircle, scale, subtract } from '#geometry/point.ts';
import { type ArcSpan, type LineSpan, nearestShare, pointAlong, type Span } from '#geometry/span.ts';
import { SAME_PLACE } from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import { hypot } from '#maths/hypot.ts';
import { crossCircles, crossLineCircle, crossLines } from './cross-carriers.ts';

/** A common place; a share of exactly 0 or 1 says that it is that span's own end. */
export interface Meeting {
  readonly point: Point;
  readonly shareA: number;
  readonly shareB: number;
}

/** All meetings of two spans, end meetings first. Overlapping spans give the ends of the overlap. */
export function meetSpans(a: Span, b: Span): Meeting[] {
  const ends = meetEnds(a, b);
  const inner = meetInside(a, b).filter(
    (meeting) => !ends.some((end) => staysClose({ a, b }, { from: end, to: meeting })),
  );
  return [...ends, ...inner];
}

function meetEnds(a: Span, b: Span): Meeting[] {
  const meetings: Meeting[] = [];
  for (const shareA of [0, 1]) {
    const point = shareA === 0 ? a.start : a.end;
    const shareB = shareIfNear(b, point);
    if (shareB !== undefined) meetings.push({ point, shareA, shareB });
  }
  for (const shareB of [0, 1]) {
    const point = shareB === 0 ? b.start : b.end;
    const shareA = shareIfNear(a, point);
    if (shareA !== undefined && shareA !== 0 && shareA !== 1) meetings.push({ point, shareA, shareB });
  }
  return meetings;
}

/** Where on the span the point lies, if it lies on it; 0 or 1 when it is the span's end. */
function shareIfNear(span: Span, point: Point): number | undefined {
  if (distance(point, span.start) <= SAME_PLACE) return 0;
  if (distance(point, span.end) <= SAME_PLACE) return 1;
  if (Math.abs(offCarrier(span, point)) > SAME_PLACE) return undefined;
  const share = nearestShare(span, point);
  return distance(pointAlong(span, share), point) <= SAME_PLACE ? share : undefined;
}

/** Signed distance of a point from the whole line or circle that the span lies on. */
function offCarrier(span: Span, point: Point): number {
  if (span.kind === 'arc') return distance(point, span.center) - span.radius;
  const along = subtract(span.end, span.start);
  return cross(along, subtract(point, span.start)) / hypot(along.x, along.y);
}

/** Crossings and touchings that are inside both spans. */
function meetInside(a: Span, b: Span): Meeting[] {
  const { touching, crossings } = meetCarriers(a, b);
  for (const foot of touching) {
    const meeting = insideBoth(a, b, foot);
    if (meeting !== undefined) return [meeting];
  }
  const meetings: Meeting[] = [];
  for (const point of crossings) {
    const meeting = insideBoth(a, b, point);
    if (meeting !== undefined) meetings.push(meeting);
  }
  return meetings;
}

function insideBoth(a: Span, b: Span, point: Point): Meeting | undefined {
  const shareA = shareOnCarrier(a, point);
  if (!(shareA > 0 && shareA < 1)) return undefined;
  const shareB = shareOnCarrier(b, point);
  return shareB > 0 && shareB < 1 ? { point, shareA, shareB } : undefined;
}

/** Share of the span at which its carrier passes the point: beyond 0 to 1 outside the span. */
function shareOnCarrier(span: Span, point: Point): number {
  if (span.kind === 'line') {
    const along = subtract(span.end, span.start);
    return dot(subtract(point, span.start), along) / dot(along, along);
  }
  const toStart = subtract(span.start, span.center);
  const toPoint = subtract(point, span.center);
  const turned = atan2(cross(toStart, toPoint), dot(toStart, toPoint)) * Math.sign(span.sweep);
  return (turned < 0 ? turned + 2 * Math.PI : turned) / Math.abs(span.sweep);
}

interface CarrierMeetings {
  /** Places where the carriers touch: they come within `SAME_PLACE`, from either side. */
  readonly touching: readonly Point[];
  readonly crossings: readonly Point[];
}

function meetCarriers(a: Span, b: Span): CarrierMeetings {
  if (a.kind === 'line') return b.kind === 'line' ? meetLines(a, b) : meetLineAndCircle(a, b);
  return b.kind === 'line' ? meetLineAndCircle(b, a) : meetCircles(a, b);
}

function meetLines(a: LineSpan, b: LineSpan): CarrierMeetings {
  const crossing = crossLines(a, b);
  return { touching: [], crossings: crossing === undefined ? [] : [crossing] };
}

function meetLineAndCircle(line: LineSpan, circle: ArcSpan): CarrierMeetings {
  const { foot, points } = crossLineCircle(line, circle);
  const isTouching = Math.abs(distance(foot, circle.center) - circle.radius) <= SAME_PLACE;
  return { touching: isTouching ? [foot] : [], crossings: points };
}

function pointAt(line: LineSpan, share: number): Point {
  return add(line.start, scale(subtract(line.end, line.start), share));
}

function meetCircles(a: ArcSpan, b: ArcSpan): CarrierMeetings {
  const between = subtract(b.center, a.center);
  const apart = hypot(between.x, between.y);
  const wider = Math.abs(a.radius - b.radius);
  // Circles that are nowhere further apart than this are one circle: only ends can meet.
  if (apart === 0 || apart + wider <= SAME_PLACE) return { touching: [], crossings: [] };
  const unit = scale(between, 1 / apart);
  const touching: Point[] = [];
  if (Math.abs(a.radius + b.radius - apart) <= SAME_PLACE)
    touching.push(add(a.center, scale(unit, a.radius)));
  if (Math.abs(apart - wider) <= SAME_PLACE) {
    touching.push(add(a.center, scale(unit, a.radius >= b.radius ? a.radius : -a.radius)));
  }
  return { touching, crossings: crossCircles(a, b) };
}

/**
 * Whether the curves stay within `SAME_PLACE` of each other from one meeting to the other. Their distance is largest
 * at an end of the stretch, where it is small already, or where they run parallel.
 */
function staysClose(spans: { a: Span; b: Span }, stretch: { from: Meeting; to: Meeting }): boolean {
  const { a, b } = spans;
  const { from, to } = stretch;
  if (a.kind === 'arc' && b.kind === 'line') {
    return isCloseBetween({ along: b, other: a }, from.shareB, to.shareB);
  }
  return isCloseBetween({ along: a, other: b }, from.shareA, to.shareA);
}

function isCloseBetween(spans: { along: Span; other: Span }, from: number, to: number): boolean {
  const { along, other } = spans;
  if (other.kind === 'line') return true;
  return parallelPoints(along, other).every((point) => {
    const share = shareOnCarrier(along, point);
    const isBetween = share > Math.min(from, to) && share < Math.max(from, to);
    return !isBetween || Math.abs(offCarrier(other, point)) <= SAME_PLACE;
  });
}

/** Points of the first carrier where it runs parallel to the circle. */
function parallelPoints(along: Span, circle: ArcSpan): Point[] {
  if (along.kind === 'line') return [pointAt(along, shareOnCarrier(along, circle.center))];
  const angle = atan2(circle.center.y - along.center.y, circle.center.x - along.center.x);
  return [
    pointOnCircle(along.center, along.radius, angle),
    pointOnCircle(along.center, along.radius, angle + Math.PI),
  ];
}

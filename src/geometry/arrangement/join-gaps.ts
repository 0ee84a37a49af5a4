/**
 * Gaps between ends that were meant to meet, closed. Two free ends that are each other's nearest are brought to where
 * their curves cross; a free end that stops just short of other linework is run on to it. Ends within `SILENT_JOIN` are
 * always joined and never mentioned; up to `joinTolerance` they are joined and reported; up to `OPEN_GAP_REACH` times
 * that they are left open and reported. No end moves further than half its own
 * curve is long; one that would move further than half its own span is long stays, and a short line leads on from it.
 */

import { itemAt } from '#geometry/assert.ts';
import type { Effort } from '#geometry/effort.ts';
import { cross, distance, dot, type Point, subtract } from '#geometry/point.ts';
import {
  bulgeOf,
  distanceToSpan,
  lineSpan,
  nearestShare,
  pointAlong,
  type Span,
  spanFromBulge,
  spanLength,
} from '#geometry/span.ts';
import { crossCarriers } from '#geometry/spans/carrier.ts';
import { OPEN_GAP_REACH, SAME_PLACE, SILENT_JOIN } from '#geometry/tolerances.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import type { LineworkTrouble, SourcedSpan } from './arrangement.ts';
import { canonicalSpans } from './canonical-spans.ts';
import { type FreeEnd, findFreeEnds } from './free-ends.ts';

/** A joined end can bring another within reach; drawings need a round for each rank. */
const ROUNDS = 8;

interface Join {
  /** Corners are closed first: 0 for two free ends, 1 for an end and a corner, 2 for an end run on to a side. */
  readonly rank: number;
  readonly ends: readonly FreeEnd[];
  readonly to: Point;
  readonly gap: number;
  readonly sources: readonly number[];
}

/** Takes and gives canonical spans; unfinished where the effort is exceeded. */
export function joinGaps(
  spans: readonly SourcedSpan[],
  { joinTolerance, effort }: { readonly joinTolerance: number; readonly effort: Effort },
): { spans: readonly SourcedSpan[]; trouble: LineworkTrouble[] } {
  const tolerance = Math.max(joinTolerance, SILENT_JOIN);
  const reach = Math.max(tolerance, OPEN_GAP_REACH * joinTolerance);
  const trouble: LineworkTrouble[] = [];
  let current = spans;
  for (let round = 1; ; round++) {
    const ends = findFreeEnds(current, { reach, effort });
    if (effort.exceeded() !== undefined) return { spans: current, trouble };
    const joins = round <= ROUNDS ? findJoins({ spans: current, ends }, tolerance) : [];
    if (joins.length === 0) return { spans: current, trouble: trouble.concat(openGaps(current, ends)) };
    // A line whose end moves may take itself to, or away from, an end that was to be run on to it: corners go first.
    const rank = joins.reduce((least, join) => Math.min(least, join.rank), Number.POSITIVE_INFINITY);
    const now = joins.filter((join) => join.rank === rank);
    for (const { to: at, gap, sources } of now) {
      if (gap > SILENT_JOIN) trouble.push({ kind: 'joined-gap', sources, at, gap });
    }
    current = canonicalSpans(applyJoins(current, now));
  }
}

interface LooseWork {
  readonly spans: readonly SourcedSpan[];
  readonly ends: readonly FreeEnd[];
}

function findJoins({ spans, ends }: LooseWork, tolerance: number): Join[] {
  const joins: Join[] = [];
  const spanOf = (end: FreeEnd) => itemAt(spans, end.span).span;
  const lengths = lengthsOfCurves(spans);
  const limitOf = (end: FreeEnd) =>
    Math.min(tolerance, (lengths.get(itemAt(spans, end.span).source) ?? 0) / 2);
  ends.forEach((end, number) => {
    const partner = partnerOf(ends, number);
    if (partner !== undefined && partner.gap <= Math.min(limitOf(end), limitOf(partner.end))) {
      // The pair is one join: its first end makes it.
      if (partner.number < number) return;
      const to = cornerOf({ span: spanOf(end), end }, { span: spanOf(partner.end), end: partner.end });
      joins.push({
        rank: 0,
        ends: [end, partner.end],
        to,
        gap: partner.gap,
        sources: sourcesOf(spans, [end.span, partner.end.span]),
      });
      return;
    }
    const target = end.nearestSpan;
    if (target === undefined || target.gap > limitOf(end)) return;
    const targetSpan = itemAt(spans, target.number).span;
    const to = footOf({ span: spanOf(end), end }, { span: targetSpan, gap: target.gap });
    const rank = to === targetSpan.start || to === targetSpan.end ? 1 : 2;
    joins.push({
      rank,
      ends: [end],
      to,
      gap: target.gap,
      sources: sourcesOf(spans, [end.span, target.number]),
    });
  });
  return joins;
}

/** mm, of drawn curves, by their numbers. */
function lengthsOfCurves(spans: readonly SourcedSpan[]): ReadonlyMap<number, number> {
  const lengths = new Map<number, number>();
  for (const { span, source } of spans) lengths.set(source, (lengths.get(source) ?? 0) + spanLength(span));
  return lengths;
}

/** The free end that is nearest to this one, and it to that, with no third curve nearer to either. */
function partnerOf(
  ends: readonly FreeEnd[],
  number: number,
): { end: FreeEnd; number: number; gap: number } | undefined {
  const own = itemAt(ends, number);
  if (own.nearestEnd === undefined) return undefined;
  const { number: otherNumber, gap } = own.nearestEnd;
  const other = itemAt(ends, otherNumber);
  if (other.nearestEnd?.number !== number) return undefined;
  const thirdIsNearer = [own, other].some(
    ({ nearestSpan }) =>
      nearestSpan !== undefined &&
      nearestSpan.gap < gap &&
      nearestSpan.number !== own.span &&
      nearestSpan.number !== other.span,
  );
  return thirdIsNearer ? undefined : { end: other, number: otherNumber, gap };
}

interface EndOfSpan {
  readonly span: Span;
  readonly end: FreeEnd;
}

/**
 * Where two ends are to meet: where their curves cross, if that is near; else at the arc's end, so that the arc stays as
 * drawn and the line gives way; else half-way.
 */
function cornerOf(a: EndOfSpan, b: EndOfSpan): Point {
  const [from, to] = [a.end.point, b.end.point];
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const crossing = crossCarriers(a.span, b.span, middle);
  // One of the ends itself, bit for bit, where the curves cross there: that span then stays as drawn.
  for (const end of [from, to])
    if (crossing !== undefined && distance(crossing, end) <= SAME_PLACE) return end;
  const near = 2 * distance(from, to);
  if (crossing !== undefined && distance(crossing, from) <= near && distance(crossing, to) <= near)
    return crossing;
  if (a.span.kind !== b.span.kind) return a.span.kind === 'arc' ? from : to;
  return middle;
}

/** Where an end is to meet a span that it nearly reaches: straight on if that is near, else the nearest point. */
function footOf(own: EndOfSpan, target: { span: Span; gap: number }): Point {
  const { point } = own.end;
  const share = nearestShare(target.span, point);
  if (share === 0) return target.span.start;
  if (share === 1) return target.span.end;
  const crossing = crossCarriers(own.span, target.span, point);
  if (
    crossing !== undefined &&
    distance(crossing, point) <= 2 * target.gap &&
    distanceToSpan(target.span, crossing) <= SAME_PLACE
  ) {
    return crossing;
  }
  return pointAlong(target.span, share);
}

function sourcesOf(spans: readonly SourcedSpan[], numbers: readonly number[]): number[] {
  return [...new Set(numbers.map((number) => itemAt(spans, number).source))].sort((a, b) => a - b);
}

function applyJoins(spans: readonly SourcedSpan[], joins: readonly Join[]): SourcedSpan[] {
  const joined = [...spans];
  for (const { ends, to } of joins) {
    for (const end of ends) {
      const { span, source } = itemAt(joined, end.span);
      const from = end.atEnd ? span.end : span.start;
      // A short arc that fitting made would be bent out of shape.
      if (distance(from, to) > spanLength(span) / 2) joined.push({ span: lineSpan(from, to), source });
      else joined[end.span] = { span: moveEnd(span, end.atEnd, to), source };
    }
  }
  return joined;
}

/** An arc moved along its own circle keeps it; moved off it, it keeps its bulge. */
function moveEnd(span: Span, atEnd: boolean, to: Point): Span {
  if (distance(atEnd ? span.end : span.start, to) === 0) return span;
  const start = atEnd ? span.start : to;
  const end = atEnd ? to : span.end;
  if (span.kind === 'line') return { kind: 'line', start, end };
  const fromCenter = subtract(start, span.center);
  const toCenter = subtract(end, span.center);
  const turned = atan2(cross(fromCenter, toCenter), dot(fromCenter, toCenter));
  const isOnCircle = Math.abs(distance(to, span.center) - span.radius) <= SAME_PLACE;
  if (isOnCircle && turned * span.sweep > 0) return { ...span, start, end, sweep: turned };
  return spanFromBulge(start, end, bulgeOf(span));
}

/** One for each pair of ends that face each other, one for each other end that nearly reaches a curve. */
function openGaps(spans: readonly SourcedSpan[], ends: readonly FreeEnd[]): LineworkTrouble[] {
  const trouble: LineworkTrouble[] = [];
  ends.forEach((end, number) => {
    const partner = partnerOf(ends, number);
    if (partner !== undefined) {
      if (partner.number < number) return;
      const at = { x: (end.point.x + partner.end.point.x) / 2, y: (end.point.y + partner.end.point.y) / 2 };
      const sources = sourcesOf(spans, [end.span, partner.end.span]);
      trouble.push({ kind: 'open-gap', sources, at, gap: partner.gap });
    } else if (end.nearestSpan !== undefined) {
      const { number: target, gap } = end.nearestSpan;
      trouble.push({ kind: 'open-gap', sources: sourcesOf(spans, [end.span, target]), at: end.point, gap });
    }
  });
  return trouble;
}

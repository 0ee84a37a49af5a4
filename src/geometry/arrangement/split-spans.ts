/**
 * Linework cut wherever it meets itself: segments that share ends and nothing else. Stretches that several spans run
 * along become one segment with all their sources, so that shared borders, partial overlaps and doubled curves need no
 * case of their own. Cost: near linear, by an index of boxes.
 */

import { itemAt } from '#geometry/assert.ts';
import { boxOfPoints, boxOfSpan, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import type { Effort } from '#geometry/effort.ts';
import { distance, type Point } from '#geometry/point.ts';
import { distanceToSpan, nearestShare, pointAlong, type Span } from '#geometry/span.ts';
import { meetSpans } from '#geometry/spans/meet-spans.ts';
import { SAME_PLACE } from '#geometry/tolerances.ts';
import type { SourcedSpan } from './arrangement.ts';
import { mergePoints } from './merge-points.ts';

/** Part of a span between two cuts. */
export interface Segment {
  /** Number of the span, and the shares of it between which the segment lies. */
  readonly parent: number;
  readonly from: number;
  readonly to: number;
  /** Places, as numbers of points. */
  readonly start: number;
  readonly end: number;
  readonly span: Span;
  /** Ascending. */
  readonly sources: readonly number[];
}

export interface SplitLinework {
  readonly points: readonly Point[];
  readonly segments: readonly Segment[];
  /** Sources that run twice along a stretch of their own. */
  readonly retraced: ReadonlyMap<number, Point>;
}

/** A place on a span's way. */
interface SplitPoint {
  readonly share: number;
  readonly place: number;
}

/** After this many rounds whatever still nearly touches stays apart; clean drawings need one. */
const SETTLING_ROUNDS = 5;

/** Cuts canonical spans; the points of the answer include places that no segment uses. Unfinished where the effort is exceeded. */
export function splitSpans(spans: readonly SourcedSpan[], effort: Effort): SplitLinework {
  const points: Point[] = spans.flatMap(({ span }) => [span.start, span.end]);
  const cuts = cutAtMeetings(spans, points, effort);
  if (effort.exceeded() !== undefined) return { points, segments: [], retraced: new Map() };
  const places = mergePoints(points, SAME_PLACE);
  for (const list of cuts) {
    list.forEach(({ share, place }, at) => {
      list[at] = { share, place: itemAt(places, place) };
    });
    list.sort((a, b) => a.share - b.share || a.place - b.place);
  }
  let segments = cutSegments({ spans, points, cuts });
  for (let round = 0; round < SETTLING_ROUNDS && cutNearPlaces({ points, cuts, segments, spans }); round++) {
    segments = cutSegments({ spans, points, cuts });
  }
  return { points, ...uniteOverlaps(segments) };
}

/** For every span its own ends and the places of its meetings with others; new crossings are appended to `points`. */
function cutAtMeetings(spans: readonly SourcedSpan[], points: Point[], effort: Effort): SplitPoint[][] {
  const cuts: SplitPoint[][] = spans.map((_, i) => [
    { share: 0, place: 2 * i },
    { share: 1, place: 2 * i + 1 },
  ]);
  const boxes = spans.map(({ span }) => growBox(boxOfSpan(span), SAME_PLACE));
  const index = indexBoxes(boxes);
  for (let i = 0; i < spans.length; i++) {
    const { span, source } = itemAt(spans, i);
    const where = { source, at: span.start };
    const near = index.meeting(itemAt(boxes, i));
    if (!effort.spend('pairs', near.length, where)) break;
    for (const j of near) {
      if (j > i && !effort.spend('meetings', cutPair({ spans, points, cuts }, i, j), where)) return cuts;
    }
  }
  return cuts;
}

/** Gives the number of places at which one of the two is cut. */
function cutPair(
  { spans, points, cuts }: Cutting & { readonly points: Point[] },
  i: number,
  j: number,
): number {
  let count = 0;
  for (const { point, shareA, shareB } of meetSpans(itemAt(spans, i).span, itemAt(spans, j).span)) {
    const isEndOfA = shareA === 0 || shareA === 1;
    const isEndOfB = shareB === 0 || shareB === 1;
    // Two ends at one place need no cut: merging the points joins them.
    if (isEndOfA && isEndOfB) continue;
    count++;
    const place = isEndOfA ? 2 * i + shareA : isEndOfB ? 2 * j + shareB : points.push(point) - 1;
    if (!isEndOfA) itemAt(cuts, i).push({ share: shareA, place });
    if (!isEndOfB) itemAt(cuts, j).push({ share: shareB, place });
  }
  return count;
}

interface Cutting {
  readonly spans: readonly SourcedSpan[];
  readonly points: readonly Point[];
  readonly cuts: SplitPoint[][];
}

function cutSegments({ spans, points, cuts }: Cutting): Segment[] {
  const segments: Segment[] = [];
  spans.forEach(({ span, source }, parent) => {
    const stops = distinctStops(itemAt(cuts, parent));
    for (let at = 1; at < stops.length; at++) {
      const { share: from, place: start } = itemAt(stops, at - 1);
      const { share: to, place: end } = itemAt(stops, at);
      const ends = { start: itemAt(points, start), end: itemAt(points, end) };
      const sources = [source];
      segments.push({ parent, from, to, start, end, span: partOfSpan(span, { from, to }, ends), sources });
    }
  });
  return segments;
}

/** Cuts with neighbours at one place taken together; the first keeps share 0 and the last share 1. */
function distinctStops(cuts: readonly SplitPoint[]): SplitPoint[] {
  const stops: SplitPoint[] = [];
  for (const cut of cuts) {
    const last = stops.at(-1);
    if (last === undefined || last.place !== cut.place) stops.push(cut);
    else if (cut.share === 1 && stops.length > 1) stops[stops.length - 1] = cut;
  }
  return stops;
}

/** The part of a span between two shares, run to the given ends; an arc keeps its centre and radius. */
export function partOfSpan(
  span: Span,
  part: { from: number; to: number },
  ends: { start: Point; end: Point },
): Span {
  const { from, to } = part;
  const { start, end } = ends;
  if (span.kind === 'line') return { kind: 'line', start, end };
  const sweep = from === 0 && to === 1 ? span.sweep : span.sweep * (to - from);
  return { ...span, start, end, sweep };
}

/** Cuts segments at places that they pass without stopping, as a crossing moved to a near end can leave them. */
function cutNearPlaces(linework: Cutting & { readonly segments: readonly Segment[] }): boolean {
  const { spans, points, cuts, segments } = linework;
  const index = indexBoxes(segments.map(({ span }) => growBox(boxOfSpan(span), SAME_PLACE)));
  const inUse = new Set(segments.flatMap(({ start, end }) => [start, end]));
  let hasCut = false;
  for (const place of inUse) {
    const point = itemAt(points, place);
    for (const number of index.meeting(boxOfPoints([point]))) {
      const { parent, start, end, span } = itemAt(segments, number);
      if (place === start || place === end || distanceToSpan(span, point) > SAME_PLACE) continue;
      const list = itemAt(cuts, parent);
      if (list.some((cut) => cut.place === place)) continue;
      list.push({ share: nearestShare(itemAt(spans, parent).span, point), place });
      list.sort((a, b) => a.share - b.share || a.place - b.place);
      hasCut = true;
    }
  }
  return hasCut;
}

/** Pieces between the same two places that run within two tolerances of each other are one segment of several sources. */
function uniteOverlaps(segments: readonly Segment[]): Pick<SplitLinework, 'segments' | 'retraced'> {
  const united: Segment[] = [];
  const retraced = new Map<number, Point>();
  const byEnds = new Map<string, number[]>();
  for (const segment of segments) {
    const key = `${Math.min(segment.start, segment.end)} ${Math.max(segment.start, segment.end)}`;
    const there = byEnds.get(key);
    if (there === undefined) byEnds.set(key, [united.push(segment) - 1]);
    else {
      const middle = pointAlong(segment.span, 0.5);
      const same = there.find(
        (number) => distance(pointAlong(itemAt(united, number).span, 0.5), middle) <= 2 * SAME_PLACE,
      );
      if (same === undefined) there.push(united.push(segment) - 1);
      else united[same] = uniteSources(itemAt(united, same), segment, { middle, retraced });
    }
  }
  return { segments: united, retraced };
}

function uniteSources(
  first: Segment,
  second: Segment,
  run: { middle: Point; retraced: Map<number, Point> },
): Segment {
  const source = itemAt(second.sources, 0);
  if (first.sources.includes(source)) {
    if (first.parent !== second.parent && !run.retraced.has(source)) run.retraced.set(source, run.middle);
    return first;
  }
  return { ...first, sources: [...first.sources, source].sort((a, b) => a - b) };
}

/** Ends of spans that meet nothing, and what lies nearest to each. Cost: near linear, by indices of boxes. */

import { itemAt } from '#geometry/assert.ts';
import { boxOfPoints, boxOfSpan, growBox } from '#geometry/box.ts';
import { type BoxIndex, indexBoxes } from '#geometry/box-index.ts';
import type { Effort } from '#geometry/effort.ts';
import { distance, type Point } from '#geometry/point.ts';
import { distanceToSpan, spanLength } from '#geometry/span.ts';
import { meetSpans } from '#geometry/spans/meet-spans.ts';
import { SAME_PLACE } from '#geometry/tolerances.ts';
import type { SourcedSpan } from './arrangement.ts';
import { mergePoints } from './merge-points.ts';

/** A curve that has come back to its own end has gone at least this many times the gap; straight on it goes once, half round π/2 times. */
const RETURNED = 3;
/** Spans of one curve looked back along: so many within reach of an end are a scribble. */
const MOST_BACK = 400;

export interface FreeEnd {
  readonly span: number;
  readonly atEnd: boolean;
  readonly point: Point;
  /** The nearest other free end in reach, as a number in the list of free ends; not that of a span already met here. */
  readonly nearestEnd: { readonly number: number; readonly gap: number } | undefined;
  /**
   * The nearest span in reach that does not share the other end of this one's span, is not met here already, and does not lie
   * behind: the stretch of its own curve that led to this end is no neighbour, however short its spans are.
   */
  readonly nearestSpan: { readonly number: number; readonly gap: number } | undefined;
}

/** Free ends of canonical spans, in the spans' order, with neighbours up to `reach` away; fewer where the effort is exceeded. */
export function findFreeEnds(
  spans: readonly SourcedSpan[],
  { reach, effort }: { readonly reach: number; readonly effort: Effort },
): FreeEnd[] {
  const points = spans.flatMap(({ span }) => [span.start, span.end]);
  const places = mergePoints(points, SAME_PLACE);
  const shared = new Int32Array(points.length);
  for (const place of places) shared[place] = itemAt(shared, place) + 1;
  const index = indexBoxes(spans.map(({ span }) => boxOfSpan(span)));
  const loose: number[] = [];
  points.forEach((point, end) => {
    if (shared[itemAt(places, end)] === 1 && !isOnOther({ spans, index, effort }, { point, own: end >> 1 }))
      loose.push(end);
  });
  const looseIndex = indexBoxes(loose.map((end) => boxOfPoints([itemAt(points, end)])));
  const spansAt = spansByPlace(places);
  const found: FreeEnd[] = [];
  for (const end of loose) {
    const point = itemAt(points, end);
    const own = end >> 1;
    const around = growBox(boxOfPoints([point]), reach);
    const ends = looseIndex.meeting(around);
    const near = index.meeting(around);
    const where = { source: itemAt(spans, own).source, at: point };
    if (!effort.spend('pairs', ends.length + near.length, where)) break;
    const isApart = (other: number) =>
      !meetsNear({ own: itemAt(spans, own), other: itemAt(spans, other) }, point, reach);
    const nearestEnd = nearestOf(ends, {
      gapTo: (other) => distance(point, itemAt(points, itemAt(loose, other))),
      isMeant: (other) => itemAt(loose, other) >> 1 !== own && isApart(itemAt(loose, other) >> 1),
      reach,
    });
    const behind = itemAt(places, end ^ 1);
    const isNeighbour = (other: number) => places[2 * other] === behind || places[2 * other + 1] === behind;
    const behindAt = waysBack({ spans, places, spansAt }, { end, most: RETURNED * reach });
    const isBehind = (other: number) => {
      const way = behindAt.get(other);
      return way !== undefined && way < RETURNED * distanceToSpan(itemAt(spans, other).span, point);
    };
    const nearestSpan = nearestOf(near, {
      gapTo: (other) => distanceToSpan(itemAt(spans, other).span, point),
      isMeant: (other) => other !== own && !isNeighbour(other) && !isBehind(other) && isApart(other),
      reach,
    });
    found.push({ span: own, atEnd: end % 2 === 1, point, nearestEnd, nearestSpan });
  }
  return found;
}

/** Span numbers by the place of their ends. */
function spansByPlace(places: ArrayLike<number> & Iterable<number>): ReadonlyMap<number, readonly number[]> {
  const at = new Map<number, number[]>();
  let end = 0;
  for (const place of places) {
    const own = at.get(place);
    if (own === undefined) at.set(place, [end >> 1]);
    else own.push(end >> 1);
    end += 1;
  }
  return at;
}

interface Chained {
  readonly spans: readonly SourcedSpan[];
  readonly places: ArrayLike<number>;
  readonly spansAt: ReadonlyMap<number, readonly number[]>;
}

/** How far one has gone back along the drawn curve, from a free end, when each of its spans begins. */
function waysBack(
  { spans, places, spansAt }: Chained,
  { end, most }: { readonly end: number; readonly most: number },
): ReadonlyMap<number, number> {
  const ways = new Map<number, number>();
  const { source } = itemAt(spans, end >> 1);
  let way = 0;
  let at = end;
  while (way <= most && ways.size < MOST_BACK) {
    const own = at >> 1;
    ways.set(own, way);
    way += spanLength(itemAt(spans, own).span);
    const place = places[at ^ 1];
    const next = (spansAt.get(place ?? -1) ?? []).find(
      (other) => !ways.has(other) && itemAt(spans, other).source === source,
    );
    if (next === undefined) break;
    at = places[2 * next] === place ? 2 * next : 2 * next + 1;
  }
  return ways;
}

function isOnOther(
  { spans, index, effort }: { spans: readonly SourcedSpan[]; index: BoxIndex; effort: Effort },
  { point, own }: { point: Point; own: number },
): boolean {
  if (effort.exceeded() !== undefined) return true;
  const near = index.meeting(growBox(boxOfPoints([point]), SAME_PLACE));
  effort.spend('pairs', near.length, { source: itemAt(spans, own).source, at: point });
  return near.some(
    (other) => other !== own && distanceToSpan(itemAt(spans, other).span, point) <= SAME_PLACE,
  );
}

/** An end that has run past the other span has no gap to it: what stands over will be taken off. */
function meetsNear(pair: { own: SourcedSpan; other: SourcedSpan }, end: Point, reach: number): boolean {
  return meetSpans(pair.own.span, pair.other.span).some(({ point }) => distance(point, end) <= reach);
}

interface Choice {
  readonly gapTo: (candidate: number) => number;
  /** Asked only of candidates that would win. */
  readonly isMeant: (candidate: number) => boolean;
  readonly reach: number;
}

/** The candidate with the least gap within reach; the lower number where two are as near. */
function nearestOf(
  candidates: readonly number[],
  { gapTo, isMeant, reach }: Choice,
): { number: number; gap: number } | undefined {
  let best: { number: number; gap: number } | undefined;
  for (const number of candidates) {
    const gap = gapTo(number);
    if (gap > reach || (best !== undefined && gap >= best.gap)) continue;
    if (isMeant(number)) best = { number, gap };
  }
  return best;
}

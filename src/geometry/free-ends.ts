/** Ends of spans that meet nothing, and what lies nearest to each. Cost: near linear, by indices of boxes. */
import type { SourcedSpan } from './arrangement.ts';
import { itemAt } from './assert.ts';
import { boxOfPoints, boxOfSpan, growBox } from './box.ts';
import { type BoxIndex, indexBoxes } from './box-index.ts';
import type { Effort } from './effort.ts';
import { meetSpans } from './meet-spans.ts';
import { mergePoints } from './merge-points.ts';
import { distance, type Point } from './point.ts';
import { distanceToSpan } from './span.ts';
import { SAME_PLACE } from './tolerances.ts';

export interface FreeEnd {
  readonly span: number;
  readonly atEnd: boolean;
  readonly point: Point;
  /** The nearest other free end in reach, as a number in the list of free ends; not that of a span already met here. */
  readonly nearestEnd: { readonly number: number; readonly gap: number } | undefined;
  /** The nearest span in reach that does not share the other end of this one's span, and is not met here already. */
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
    const nearestSpan = nearestOf(near, {
      gapTo: (other) => distanceToSpan(itemAt(spans, other).span, point),
      isMeant: (other) => other !== own && !isNeighbour(other) && isApart(other),
      reach,
    });
    found.push({ span: own, atEnd: end % 2 === 1, point, nearestEnd, nearestSpan });
  }
  return found;
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

/** Ends of spans that meet nothing, and what lies nearest to each. Cost: near linear, by indices of boxes. */
import type { SourcedSpan } from './arrangement.ts';
import { itemAt } from './assert.ts';
import { type Box, boxOfPoints, boxOfSpan, growBox } from './box.ts';
import { type BoxIndex, indexBoxes } from './box-index.ts';
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

/** Free ends of canonical spans, in the spans' order, with neighbours up to `reach` away. */
export function findFreeEnds(spans: readonly SourcedSpan[], reach: number): FreeEnd[] {
  const points = spans.flatMap(({ span }) => [span.start, span.end]);
  const places = mergePoints(points, SAME_PLACE);
  const shared = new Int32Array(points.length);
  for (const place of places) shared[place] = itemAt(shared, place) + 1;
  const index = indexBoxes(spans.map(({ span }) => boxOfSpan(span)));
  const loose: number[] = [];
  points.forEach((point, end) => {
    if (shared[itemAt(places, end)] === 1 && !isOnOther({ spans, index }, { point, own: end >> 1 }))
      loose.push(end);
  });
  const looseIndex = indexBoxes(loose.map((end) => boxOfPoints([itemAt(points, end)])));
  return loose.map((end, self): FreeEnd => {
    const point = itemAt(points, end);
    const around = growBox(boxOfPoints([point]), reach);
    const isApart = (other: number) =>
      !meetsNear({ own: itemAt(spans, end >> 1), other: itemAt(spans, other) }, point, reach);
    const nearestEnd = nearestOf(
      looseIndex
        .meeting(around)
        .filter((other) => itemAt(loose, other) >> 1 !== end >> 1 && isApart(itemAt(loose, other) >> 1)),
      (other) => distance(point, itemAt(points, itemAt(loose, other))),
      reach,
    );
    const behind = itemAt(places, end ^ 1);
    const isNeighbour = (other: number) => places[2 * other] === behind || places[2 * other + 1] === behind;
    const nearestSpan = nearestOf(
      index.meeting(around).filter((other) => other !== end >> 1 && !isNeighbour(other) && isApart(other)),
      (other) => distanceToSpan(itemAt(spans, other).span, point),
      reach,
    );
    return { span: itemAt(loose, self) >> 1, atEnd: end % 2 === 1, point, nearestEnd, nearestSpan };
  });
}

function isOnOther(
  linework: { spans: readonly SourcedSpan[]; index: BoxIndex },
  end: { point: Point; own: number },
): boolean {
  const around: Box = growBox(boxOfPoints([end.point]), SAME_PLACE);
  return linework.index
    .meeting(around)
    .some(
      (other) =>
        other !== end.own && distanceToSpan(itemAt(linework.spans, other).span, end.point) <= SAME_PLACE,
    );
}

/** An end that has run past the other span has no gap to it: what stands over will be taken off. */
function meetsNear(pair: { own: SourcedSpan; other: SourcedSpan }, end: Point, reach: number): boolean {
  return meetSpans(pair.own.span, pair.other.span).some(({ point }) => distance(point, end) <= reach);
}

/** The candidate with the least gap within reach; the lower number where two are as near. */
function nearestOf(
  candidates: readonly number[],
  gapTo: (candidate: number) => number,
  reach: number,
): { number: number; gap: number } | undefined {
  let best: { number: number; gap: number } | undefined;
  for (const number of candidates) {
    const gap = gapTo(number);
    if (gap <= reach && (best === undefined || gap < best.gap)) best = { number, gap };
  }
  return best;
}

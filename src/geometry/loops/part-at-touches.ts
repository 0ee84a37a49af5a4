/**
 * Loops linked one way only where they touch. A boundary that comes to one place twice can be traced in several ways, all of them
 * right: as one loop or two, as a hole or a bay. Here what meets in a place of no width is apart, so that a shape has the same
 * loops whatever they were linked like before. O(n log n) in spans.
 */

import { partOfSpan } from '#geometry/arrangement/split-spans.ts';
import { itemAt } from '#geometry/assert.ts';
import { boxOfPoints, boxOfSpan, growBox } from '#geometry/box.ts';
import { type BoxIndex, indexBoxes } from '#geometry/box-index.ts';
import { disjointSets } from '#geometry/disjoint-sets.ts';
import { distance, type Point } from '#geometry/point.ts';
import {
  distanceToSpan,
  type Loop,
  loopArea,
  nearestShare,
  pointAlong,
  type Span,
  spanLength,
  spansLength,
} from '#geometry/span.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import { cornerArcs } from './corner-arcs.ts';

/** The area on the left of the loops, its parts apart wherever they meet within `touching` (mm). The same loops where nothing meets. */
export function partAtTouches(loops: readonly Loop[], touching: number): readonly Loop[] {
  // So that a round that just reaches a straight has a corner there.
  const spans = cornerArcs(loops).flat();
  const index = indexBoxes(spans.map((span) => growBox(boxOfSpan(span), touching)));
  const { spans: cut, nodes, isMerged } = withoutOpposites(cutWhereTouched(spans, index, touching), touching);
  const hasTouch = nodes.leaving.some((spansThere) => spansThere.length > 1);
  if (!hasTouch && !isMerged) return loops;
  // Along a stretch where borders lie on each other loops come out that enclose nothing.
  return traced(cut, nodes).filter((loop) => 2 * Math.abs(loopArea(loop)) > touching * spansLength(loop));
}

/** The spans, cut where the start of another lies on them. */
function cutWhereTouched(spans: readonly Span[], index: BoxIndex, touching: number): Span[] {
  const cuts: number[][] = spans.map(() => []);
  for (const { start } of spans) {
    for (const number of index.meeting(boxOfPoints([start]))) {
      const span = itemAt(spans, number);
      const isEnd = Math.min(distance(span.start, start), distance(span.end, start)) <= touching;
      if (!isEnd && distanceToSpan(span, start) <= touching)
        itemAt(cuts, number).push(nearestShare(span, start));
    }
  }
  return spans.flatMap((span, number) => {
    const shares = [...new Set([0, ...itemAt(cuts, number), 1])].sort((a, b) => a - b);
    return shares.slice(1).map((to, i) => {
      const from = itemAt(shares, i);
      const start = from === 0 ? span.start : pointAlong(span, from);
      return partOfSpan(span, { from, to }, { start, end: to === 1 ? span.end : pointAlong(span, to) });
    });
  });
}

/** Leaves out spans that run against each other: there is area on both sides, and no border. */
function withoutOpposites(
  spans: readonly Span[],
  touching: number,
): { readonly spans: readonly Span[]; readonly nodes: Nodes; readonly isMerged: boolean } {
  const nodes = nodesOf(spans, touching);
  const gone = new Set<number>();
  spans.forEach((span, number) => {
    if (gone.has(number)) return;
    const middle = pointAlong(span, 0.5);
    const start = nodes.starts[number];
    const opposite = itemAt(nodes.leaving, itemAt(nodes.ends, number)).find((other) => {
      const isOpposite = other !== number && !gone.has(other) && nodes.ends[other] === start;
      return isOpposite && distance(pointAlong(itemAt(spans, other), 0.5), middle) <= touching;
    });
    if (opposite !== undefined) gone.add(number).add(opposite);
  });
  if (gone.size === 0) return { spans, nodes, isMerged: false };
  const kept = spans.filter((_, number) => !gone.has(number));
  return { spans: kept, nodes: nodesOf(kept, touching), isMerged: true };
}

interface Nodes {
  /** By span, the node where it starts. */
  readonly starts: readonly number[];
  /** By span, the node where it ends. */
  readonly ends: readonly number[];
  /** By node, the spans that start there. */
  readonly leaving: readonly number[][];
}

/** Starts within `touching` of each other are one node; a span ends at the node nearest to its end. */
function nodesOf(spans: readonly Span[], touching: number): Nodes {
  const index = indexBoxes(spans.map(({ start }) => growBox(boxOfPoints([start]), touching)));
  const near = (point: Point): number[] =>
    index
      .meeting(boxOfPoints([point]))
      .filter((other) => distance(itemAt(spans, other).start, point) <= touching);
  const sets = disjointSets(spans.length);
  spans.forEach(({ start }, i) => {
    for (const other of near(start)) sets.unite(i, other);
  });
  const starts = spans.map((_, i) => sets.find(i));
  const leaving: number[][] = spans.map(() => []);
  starts.forEach((node, i) => {
    itemAt(leaving, node).push(i);
  });
  const ends = spans.map(({ end }, i) => sets.find(near(end)[0] ?? i));
  return { starts, ends, leaving };
}

/** Goes from each span to the one that keeps closest to the area on its left. */
function traced(spans: readonly Span[], { ends, leaving }: Nodes): Loop[] {
  const free = leaving.map((numbers) => [...numbers]);
  const used = new Set<number>();
  const loops: Loop[] = [];
  spans.forEach((_, first) => {
    const loop: Span[] = [];
    for (let next: number | undefined = first; next !== undefined && !used.has(next); ) {
      used.add(next);
      loop.push(itemAt(spans, next));
      const there: number[] = itemAt(free, itemAt(ends, next));
      next = sharpestLeft(itemAt(spans, next), there, spans);
    }
    if (loop.length > 0) loops.push(loop);
  });
  return loops;
}

/** Of the spans that leave the node where `arriving` ends, the first one clockwise from where it came. */
function sharpestLeft(arriving: Span, there: readonly number[], spans: readonly Span[]): number | undefined {
  if (there.length < 2) return there[0];
  const reach = Math.min(...[arriving, ...there.map((number) => itemAt(spans, number))].map(straightFor));
  const back = headingAt(arriving.end, pointAlong(arriving, 1 - reach / spanLength(arriving)));
  const turns = there.map((number) => {
    const span = itemAt(spans, number);
    const turn = back - headingAt(span.start, pointAlong(span, reach / spanLength(span)));
    return { number, turn: turn < 0 ? turn + 2 * Math.PI : turn };
  });
  return turns.reduce((least, each) => (each.turn < least.turn ? each : least)).number;
}

/** mm from an end for which a span keeps to one direction well enough to be put in order with others by where it then is. */
function straightFor(span: Span): number {
  const half = spanLength(span) / 2;
  return span.kind === 'arc' ? Math.min(half, span.radius / 2) : half;
}

function headingAt(from: Point, to: Point): number {
  return atan2(to.y - from.y, to.x - from.x);
}

/** All points within a distance of some lines and arcs, wherever these lie: a band along them, round at ends and corners. */

import { itemAt } from '#geometry/assert.ts';
import { boxOfSpan, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { disjointSets } from '#geometry/disjoint-sets.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, reverseSpan, reverseSpans, type Span } from '#geometry/span.ts';
import { GRID, NUDGE } from '#geometry/tolerances.ts';
import { gridOrigin, gridPolygonOf, positivelyWound } from './grid-polygons.ts';
import { parallelBands } from './parallel-bands.ts';
import { type PushedBorder, pushPoint, pushSide } from './push-border.ts';
import { rebuildLoops, spansOf } from './rebuild-loops.ts';

/**
 * Spans far from each other are grown apart, for clipper-lib takes the square of what it is given at once; closed borders by their
 * parallels, where these are enough.
 * @param by millimetres, more than 0
 */
export function growSpans(spans: readonly Span[], by: number): Loop[] {
  if (spans.length === 0) return [];
  const origin = gridOrigin(spans);
  return nearGroups(spans, by).flatMap((near) => parallelBands(near, by) ?? growTogether(near, by, origin));
}

function growTogether(spans: readonly Span[], by: number, origin: Point): Loop[] {
  const pushed = pushAll(spans, by);
  // Pushing takes turns away; the reversed chains give them.
  const polygons = pushed.flatMap(({ chains }) =>
    chains.map((chain) => gridPolygonOf(reverseSpans(chain), origin)),
  );
  const carriers = pushed.flatMap((each) => each.carriers).map((span) => ({ span, isKnown: false }));
  return rebuildLoops(positivelyWound(polygons), carriers, origin).map(spansOf);
}

/** Both sides of each span, then each end once, however many spans meet there: a second disc would only cost. */
function pushAll(spans: readonly Span[], width: number): PushedBorder[] {
  const rounded = new Map<number, Set<number>>();
  const isNew = ({ x, y }: Point): boolean => {
    const column = rounded.get(x);
    if (column?.has(y) === true) return false;
    if (column === undefined) rounded.set(x, new Set([y]));
    else column.add(y);
    return true;
  };
  return [
    ...spans.flatMap((span) => [span, reverseSpan(span)]).map((span) => pushSide({ span, width })),
    ...spans
      .flatMap(({ start, end }) => [start, end])
      .filter(isNew)
      .map((end) => pushPoint(end, width)),
  ];
}

/** Spans whose grown boxes meet, one after the other, in the order of their first. */
function nearGroups(spans: readonly Span[], by: number): Span[][] {
  const boxes = spans.map(boxOfSpan);
  const index = indexBoxes(boxes);
  const sets = disjointSets(spans.length);
  // Each is pushed by a nudge more, and put on the grid.
  const reach = 2 * (by + NUDGE + GRID);
  boxes.forEach((box, one) => {
    for (const other of index.meeting(growBox(box, reach))) sets.unite(one, other);
  });
  const groups = new Map<number, Span[]>();
  for (const one of spans.keys()) {
    const first = sets.find(one);
    const group = groups.get(first) ?? [];
    group.push(itemAt(spans, one));
    groups.set(first, group);
  }
  return [...groups.values()];
}

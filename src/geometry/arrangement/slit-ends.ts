/**
 * Ends of slits: where linework comes nearer to other linework than a line can be placed, without meeting it. Two outlines that
 * were meant to share a border leave such a slit between them, open at its ends; a short line across each end makes it a face,
 * and so a sliver like any other. Near linear in edges.
 */

import { itemAt } from '#geometry/assert.ts';
import { boxOfPoints, boxOfSpan, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { distance, dot, type Point, scale } from '#geometry/point.ts';
import { type LineSpan, lineSpan, nearestShare, pointAlong, tangentAlong } from '#geometry/span.ts';
import { RUNS_ON, SAME_PLACE, SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import type { Arrangement } from './arrangement.ts';

export interface SlitEnd {
  readonly span: LineSpan;
  /** The edge that it comes to. */
  readonly edge: number;
}

/** From every corner and joint to each edge that it all but touches. Where a drawing cuts a line in two is neither. */
export function slitEnds(arrangement: Arrangement): SlitEnd[] {
  const { vertices, edges } = arrangement;
  const runsOn = runningOn(arrangement);
  const index = indexBoxes(edges.map(({ span }) => growBox(boxOfSpan(span), SCRIBE_ACCURACY)));
  return vertices.flatMap((from, vertex) => {
    if (runsOn[vertex] === true) return [];
    return index.meeting(boxOfPoints([from])).flatMap((number): SlitEnd[] => {
      const { span } = itemAt(edges, number);
      const to = pointAlong(span, nearestShare(span, from));
      const gap = distance(from, to);
      // A vertex has no gap to an edge of its own.
      if (gap <= SAME_PLACE || gap > SCRIBE_ACCURACY) return [];
      return [{ span: lineSpan(from, to), edge: number }];
    });
  });
}

/** By vertex, whether linework only runs on there: two edges, and no corner between them. */
function runningOn({ vertices, edges }: Arrangement): boolean[] {
  const leaving: Point[][] = vertices.map(() => []);
  for (const { span, start, end } of edges) {
    itemAt(leaving, start).push(tangentAlong(span, 0));
    itemAt(leaving, end).push(scale(tangentAlong(span, 1), -1));
  }
  return leaving.map(([one, other, ...more]) => {
    const isJoint = one === undefined || other === undefined || more.length > 0;
    return !isJoint && dot(one, other) < -RUNS_ON;
  });
}

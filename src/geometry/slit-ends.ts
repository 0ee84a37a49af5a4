/**
 * Ends of slits: where linework comes nearer to other linework than a line can be placed, without meeting it. Two outlines that
 * were meant to share a border leave such a slit between them, open at its ends; a short line across each end makes it a face,
 * and so a sliver like any other. Near linear in edges.
 */
import type { Arrangement } from './arrangement.ts';
import { itemAt } from './assert.ts';
import { boxOfPoints, boxOfSpan, growBox } from './box.ts';
import { indexBoxes } from './box-index.ts';
import { distance } from './point.ts';
import { type LineSpan, lineSpan, nearestShare, pointAlong } from './span.ts';
import { SAME_PLACE, SCRIBE_ACCURACY } from './tolerances.ts';

export interface SlitEnd {
  readonly span: LineSpan;
  /** The edge that it comes to. */
  readonly edge: number;
}

/** From every vertex to each edge that it all but touches. */
export function slitEnds({ vertices, edges }: Arrangement): SlitEnd[] {
  const index = indexBoxes(edges.map(({ span }) => growBox(boxOfSpan(span), SCRIBE_ACCURACY)));
  return vertices.flatMap((from, vertex) =>
    index.meeting(boxOfPoints([from])).flatMap((number): SlitEnd[] => {
      const { span, start, end } = itemAt(edges, number);
      if (start === vertex || end === vertex) return [];
      const to = pointAlong(span, nearestShare(span, from));
      const gap = distance(from, to);
      if (gap <= SAME_PLACE || gap > SCRIBE_ACCURACY) return [];
      return [{ span: lineSpan(from, to), edge: number }];
    }),
  );
}

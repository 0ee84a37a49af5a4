/** The extents of outlines to be written, arcs with their bellies; empty for none. */
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfPoints, boxOfSpan, EMPTY_BOX, joinBoxes } from '#geometry/box.ts';
import { spanFromBulge } from '#geometry/span.ts';
import type { OutlineOut } from './drawing-out.ts';

export function boxOfOutlines(outlines: readonly OutlineOut[]): Box {
  let box = EMPTY_BOX;
  for (const { closed, vertices } of outlines) {
    box = joinBoxes(box, boxOfPoints(vertices.map(([x, y]) => ({ x, y }))));
    for (const [index, [x, y, bulge]] of vertices.entries()) {
      if (bulge === 0 || (!closed && index === vertices.length - 1)) continue;
      const [endX, endY] = itemAt(vertices, (index + 1) % vertices.length);
      box = joinBoxes(box, boxOfSpan(spanFromBulge({ x, y }, { x: endX, y: endY }, bulge)));
    }
  }
  return box;
}

/** The extents of outlines to be written, arcs with their bellies; empty for none. */
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpan, EMPTY_BOX, joinBoxes } from '#geometry/box.ts';
import { spanFromBulge } from '#geometry/span.ts';
import type { OutlineOut } from './drawing-out.ts';

type Vertex = OutlineOut['vertices'][number];

export function boxOfOutlines(outlines: readonly OutlineOut[]): Box {
  let box = boxOfVertices(outlines);
  for (const { closed, vertices } of outlines) {
    const last = closed ? vertices.length : vertices.length - 1;
    for (let index = 0; index < last; index++) {
      const from = itemAt(vertices, index);
      const to = itemAt(vertices, index + 1 < vertices.length ? index + 1 : 0);
      if (from[2] === 0 || isSurelyWithin(box, from, to)) continue;
      const [start, end] = [from, to].map(([x, y]) => ({ x, y }));
      if (start !== undefined && end !== undefined)
        box = joinBoxes(box, boxOfSpan(spanFromBulge(start, end, from[2])));
    }
  }
  return box;
}

function boxOfVertices(outlines: readonly OutlineOut[]): Box {
  let { minX, minY, maxX, maxY } = EMPTY_BOX;
  for (const { vertices } of outlines) {
    for (const [x, y] of vertices) {
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
    }
  }
  return { minX, minY, maxX, maxY };
}

/** An arc of at most half a turn lies in the circle that has its chord across, and so within its length of either end. */
function isSurelyWithin({ minX, minY, maxX, maxY }: Box, [x, y]: Vertex, [toX, toY]: Vertex): boolean {
  const most = Math.abs(toX - x) + Math.abs(toY - y);
  return x - most > minX && x + most < maxX && y - most > minY && y + most < maxY;
}

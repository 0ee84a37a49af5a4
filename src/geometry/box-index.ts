/** Which of many boxes meet a box: the adaptor of flatbush, a packed Hilbert R-tree. Building is O(n log n). */
import Flatbush from 'flatbush';
import { type Box, boxesMeet } from './box.ts';

export interface BoxIndex {
  /** Numbers of the boxes that meet the given one, ascending. */
  readonly meeting: (box: Box) => number[];
}

/** Up to as many boxes, looking at all of them is cheaper than a tree (measured). */
const FEW_BOXES = 100;

export function indexBoxes(boxes: readonly Box[]): BoxIndex {
  if (boxes.length <= FEW_BOXES) return { meeting: (box) => meetingAmong(boxes, box) };
  const tree = new Flatbush(boxes.length);
  for (const { minX, minY, maxX, maxY } of boxes) tree.add(minX, minY, maxX, maxY);
  tree.finish();
  return {
    meeting: ({ minX, minY, maxX, maxY }) => tree.search(minX, minY, maxX, maxY).sort((a, b) => a - b),
  };
}

function meetingAmong(boxes: readonly Box[], box: Box): number[] {
  const meeting: number[] = [];
  for (let at = 0; at < boxes.length; at++) {
    if (boxesMeet(boxes[at] as Box, box)) meeting.push(at);
  }
  return meeting;
}

/** Which of many boxes meet a box: the adaptor of flatbush, a packed Hilbert R-tree. Building is O(n log n). */
import Flatbush from 'flatbush';
import type { Box } from './box.ts';

export interface BoxIndex {
  /** Numbers of the boxes that meet the given one, ascending. */
  readonly meeting: (box: Box) => number[];
}

export function indexBoxes(boxes: readonly Box[]): BoxIndex {
  if (boxes.length === 0) return { meeting: () => [] };
  const tree = new Flatbush(boxes.length);
  for (const { minX, minY, maxX, maxY } of boxes) tree.add(minX, minY, maxX, maxY);
  tree.finish();
  return {
    meeting: ({ minX, minY, maxX, maxY }) => tree.search(minX, minY, maxX, maxY).sort((a, b) => a - b),
  };
}

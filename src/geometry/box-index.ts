/** Which of many boxes meet a box: the adaptor of flatbush, a packed Hilbert R-tree. Building is O(n log n). */
import Flatbush from 'flatbush';
import { itemAt } from './assert.ts';
import type { Box } from './box.ts';

export interface BoxIndex {
  /** Numbers of the boxes that meet the given one, ascending. */
  readonly meeting: (box: Box) => number[];
  /** Calls back for each box that holds a point, in no special order. */
  readonly around: (x: number, y: number, take: (number: number) => void) => void;
}

/** Up to as many boxes, looking at all of them is cheaper than a tree (measured). */
const FEW_BOXES = 100;

export function indexBoxes(boxes: readonly Box[]): BoxIndex {
  if (boxes.length <= FEW_BOXES) return lookAtAll(boxes);
  const tree = new Flatbush(boxes.length);
  for (const { minX, minY, maxX, maxY } of boxes) tree.add(minX, minY, maxX, maxY);
  tree.finish();
  return {
    meeting: ({ minX, minY, maxX, maxY }) => sortAscending(tree.search(minX, minY, maxX, maxY)),
    around: (x, y, take) => {
      tree.search(x, y, x, y, (at) => {
        take(at);
        return false;
      });
    },
  };
}

/** In place. By way of a typed array, which is sorted without a call for each pair: four times as fast (measured). */
function sortAscending(numbers: number[]): number[] {
  const sorted = new Uint32Array(numbers.length);
  for (let i = 0; i < sorted.length; i++) sorted[i] = itemAt(numbers, i);
  sorted.sort();
  for (let i = 0; i < sorted.length; i++) numbers[i] = itemAt(sorted, i);
  return numbers;
}

function lookAtAll(boxes: readonly Box[]): BoxIndex {
  const sides = new Float64Array(4 * boxes.length);
  boxes.forEach(({ minX, minY, maxX, maxY }, at) => {
    sides[4 * at] = minX;
    sides[4 * at + 1] = minY;
    sides[4 * at + 2] = maxX;
    sides[4 * at + 3] = maxY;
  });
  const find = (box: Box, take: (number: number) => void): void => {
    const { minX, minY, maxX, maxY } = box;
    for (let at = 0; at < sides.length; at += 4) {
      if (
        (sides[at] ?? Number.NaN) <= maxX &&
        (sides[at + 1] ?? Number.NaN) <= maxY &&
        minX <= (sides[at + 2] ?? Number.NaN) &&
        minY <= (sides[at + 3] ?? Number.NaN)
      )
        take(at / 4);
    }
  };
  return {
    meeting: (box) => {
      const meeting: number[] = [];
      find(box, (at) => meeting.push(at));
      return meeting;
    },
    around: (x, y, take) => find({ minX: x, minY: y, maxX: x, maxY: y }, take),
  };
}

/** Boxes that are added one by one, kept by the square cells of the plane that they lie in: for many of about the cells' size. */
import { type Box, boxesMeet } from './box.ts';

export interface GrowingBoxes<Item> {
  readonly add: (box: Box, item: Item) => void;
  /** Whether all items whose boxes meet the given one are so; an item may be asked about more than once. */
  readonly everyMeeting: (box: Box, isSo: (item: Item) => boolean) => boolean;
}

/** @param cell side of a cell, mm */
export function growingBoxes<Item>(cell: number): GrowingBoxes<Item> {
  const cells = new Map<string, { readonly box: Box; readonly item: Item }[]>();
  return {
    add: (box, item) => {
      for (const key of keysOf(box, cell)) {
        const there = cells.get(key);
        if (there === undefined) cells.set(key, [{ box, item }]);
        else there.push({ box, item });
      }
    },
    everyMeeting: (box, isSo) => {
      for (const key of keysOf(box, cell)) {
        for (const each of cells.get(key) ?? [])
          if (boxesMeet(each.box, box) && !isSo(each.item)) return false;
      }
      return true;
    },
  };
}

function* keysOf({ minX, minY, maxX, maxY }: Box, cell: number): Generator<string, void> {
  for (let x = Math.floor(minX / cell); x * cell <= maxX; x++) {
    for (let y = Math.floor(minY / cell); y * cell <= maxY; y++) yield `${x} ${y}`;
  }
}

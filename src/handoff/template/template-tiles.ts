/**
 * How a template is laid on pages. The grid of tiles follows from the sheet, the label and the marks of slots; names of regions
 * follow from the grid (`region-names.ts`), so that each is whole on some page. Tiles that hold nothing of the template are not printed.
 */
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpans, joinBoxes } from '#geometry/box.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { type Loop, pointAlong, spanLength } from '#geometry/span.ts';
import { boxOfText } from './ink.ts';
import { templateLabel } from './template-label.ts';
import type { UnnamedSet } from './template-set.ts';
import { type Tile, type TileGrid, tileGrid, tilesOf } from './tile-pages.ts';

/** As many letters as any. */
const SOME_HASH = '0'.repeat(64);
/** mm along the template's edge between places looked at. */
const EDGE_STEP = 4;

export function templateGrid(set: UnnamedSet, number: number): TileGrid {
  const { sheet, input, marks } = set;
  const { texts } = templateLabel(set, number, SOME_HASH);
  // All words of the label but the names of holes, which stand elsewhere.
  const label = texts.slice(0, texts.length - sheet.holes.length).map(boxOfText);
  const words = [...texts, ...itemAt(marks, number - 1).flatMap((mark) => mark.texts)].map(boxOfText);
  return tileGrid(boxOfSpans(sheet.outline), input.choices.paper, [joined(label), ...words]);
}

/** The tiles that are printed, and their grid. */
export function templateTiles(
  set: UnnamedSet,
  number: number,
): { readonly grid: TileGrid; readonly tiles: readonly Tile[] } {
  const grid = templateGrid(set, number);
  return { grid, tiles: tilesOf(grid).filter((tile) => isPrinted(tile, set.sheet.outline)) };
}

/** Whether a tile has anything of the template on it. */
function isPrinted({ box }: Tile, outline: Loop): boolean {
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  if (isInsideLoops([outline], middle)) return true;
  return outline.some((span) => {
    const count = Math.max(1, Math.ceil(spanLength(span) / EDGE_STEP));
    return Array.from({ length: count + 1 }, (_, i) => pointAlong(span, i / count)).some(
      ({ x, y }) => x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY,
    );
  });
}

function joined(boxes: readonly Box[]): Box {
  return boxes.reduce((whole, each) => joinBoxes(whole, each), itemAt(boxes, 0));
}

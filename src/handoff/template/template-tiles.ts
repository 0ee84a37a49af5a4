/**
 * How a template is laid on pages. The grid of tiles follows from the sheet, the label and the marks of slots; names of regions
 * follow from the grid (`region-names.ts`), so that each is whole on some page. Tiles with nothing to lay, cut or identify it by are not printed.
 */
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxesMeet, boxOfSpan, boxOfSpans, joinBoxes } from '#geometry/box.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Point } from '#geometry/point.ts';
import { pointAlong, type Span, spanLength } from '#geometry/span.ts';
import { boxOfText } from './ink.ts';
import { templateLabel } from './template-label.ts';
import type { UnnamedSet } from './template-set.ts';
import { circleOf } from './template-sheet.ts';
import { holds, ownBox, type Tile, type TileGrid, tileGrid, tilesOf } from './tile-pages.ts';

/** As many letters as any. */
const SOME_HASH = '0'.repeat(64);
/** mm along a line between places looked at: less than neighbouring tiles overlap. */
const STEP = 4;

export function templateGrid(set: UnnamedSet, number: number): TileGrid {
  const { sheet, input, marks } = set;
  const { texts } = templateLabel(set, number, SOME_HASH);
  // All words of the label but the names of holes, which stand elsewhere.
  const label = texts.slice(0, texts.length - sheet.holes.length).map(boxOfText);
  const words = [...texts, ...itemAt(marks, number - 1).flatMap((mark) => mark.texts)].map(boxOfText);
  return tileGrid(boxOfSpans(sheet.outline), input.choices.paper, [joined(label), ...words]);
}

/** The tiles that are printed, and their grid: none for the template's border or its key alone, which the map has too. */
export function templateTiles(
  set: UnnamedSet,
  number: number,
): { readonly grid: TileGrid; readonly tiles: readonly Tile[] } {
  const grid = templateGrid(set, number);
  const all = tilesOf(grid);
  const content = contentOf(set, number);
  const needed = new Set(content.words.map((word) => tileForWord(word, all, grid)));
  const isPrinted = (tile: Tile) =>
    // One in the midst of a large pocket is blank and holds its neighbours together.
    isInsideLoops(set.sheet.part, middleOf(tile.box)) ||
    needed.has(tile) ||
    content.spans.some((span) => entersBox(span, ownBox(tile, grid)));
  return { grid, tiles: all.filter((tile) => all.length === 1 || isPrinted(tile)) };
}

/** Of the tiles that hold all of a word the one whose own it is, if that is among them. */
function tileForWord(word: Box, tiles: readonly Tile[], grid: TileGrid): Tile | undefined {
  const whole = tiles.filter(({ box }) => holds(box, word));
  return whole.find((tile) => holds(ownBox(tile, grid), word)) ?? whole[0];
}

interface Content {
  /** Lines of which any bit counts. */
  readonly spans: readonly Span[];
  /** Words, which are printed where a tile holds all of them. */
  readonly words: readonly Box[];
}

/** What the template is laid and cut by, and what it states of itself. */
function contentOf({ sheet, templates, ...set }: UnnamedSet, number: number): Content {
  const { texts, keyTexts, square } = templateLabel({ sheet, templates, ...set }, number, SOME_HASH);
  const slots = itemAt(templates, number - 1).flatMap(({ outline }) => outline.flat());
  return {
    spans: [...slots, ...sheet.part.flat(), ...sheet.holes.flatMap(circleOf), ...square.spans],
    words: texts.filter((text) => !keyTexts.includes(text)).map(boxOfText),
  };
}

/** Whether a span, looked at every few millimetres, has a bit in a box. */
function entersBox(span: Span, box: Box): boolean {
  if (!boxesMeet(boxOfSpan(span), box)) return false;
  const count = Math.max(1, Math.ceil(spanLength(span) / STEP));
  return Array.from({ length: count + 1 }, (_, i) => pointAlong(span, i / count)).some(
    ({ x, y }) => x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY,
  );
}

function middleOf({ minX, maxX, minY, maxY }: Box): Point {
  return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
}

function joined(boxes: readonly Box[]): Box {
  return boxes.reduce((whole, each) => joinBoxes(whole, each), itemAt(boxes, 0));
}

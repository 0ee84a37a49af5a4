/**
 * A sheet laid out on pages at true size. Tiles overlap; registration marks stand where the corners of four tiles come together,
 * in the middle of the overlap, so that each mark is printed on every page that it joins.
 */

import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import { PAPER, type PageSize } from '#handoff/pdf/pen.ts';
import type { TemplatePaper } from '#job/fields/template-fields.ts';

/** mm that printers leave white (common practice: about 5), and the strips for scale bar and foot within that. */
export const EDGE = 8;
export const STRIP = 9;
const FOOT = 12;
/** Of neighbouring tiles, mm: a mark 8 mm across fits with room to trim. */
const OVERLAP = 16;

export interface TileGrid {
  readonly page: PageSize;
  /** On the page, mm: what is drawn inside is the template. */
  readonly window: Box;
  readonly columns: number;
  readonly rows: number;
  /** Lower left corner of the first tile's window, on the template. */
  readonly origin: Point;
  /** From tile to tile. */
  readonly step: PageSize;
}

export interface Tile {
  /** Column letter, row number from below: A1, B1 … */
  readonly name: string;
  readonly column: number;
  readonly row: number;
  /** On the template. */
  readonly box: Box;
  /** Places of registration marks on the template. */
  readonly marks: readonly Point[];
}

/** ISO 216, the short side across, and what the pen knows. */
const SIZES = {
  ...PAPER,
  a2: { width: 420, height: 594 },
  a1: { width: 594, height: 841 },
  a0: { width: 841, height: 1189 },
} as const;

/** mm across the roll; it is as long as needed. */
const ROLLS: Readonly<Record<string, number>> = { 'roll-610': 610, 'roll-914': 914, 'roll-1067': 1067 };
/** mm: a PDF page is no longer than 14 400 points (ISO 32000-1, Annex C). */
const LONGEST = 5000;
/** mm of a page that its window leaves. */
const AROUND = { width: 2 * EDGE + STRIP, height: 2 * EDGE + FOOT + STRIP };
/** Columns and rows tried beyond those that the sheet needs, fewest pages first. */
const MORE = [
  [0, 0],
  [0, 1],
  [1, 0],
  [1, 1],
] as const;
/** Shifts tried of a grid over what it has to spare, either way, so that no words are cut. */
const SHIFTS = 8;

/**
 * The way of turning the paper that takes fewer pages. Of all ways to lay its grid that take no more pages, the one that leaves most of
 * `whole` in one tile each; one row or column more where that is what the most serious of them, the first, needs, or the others where no
 * tile is large enough for it.
 */
export function tileGrid(box: Box, paper: TemplatePaper, whole: readonly Box[] = []): TileGrid {
  const [upright, across] = pagesFor(box, paper).map((page) => gridOn(box, page, whole));
  if (upright === undefined) throw new Error('there is a way to turn every paper');
  if (across === undefined) return upright;
  return across.columns * across.rows < upright.columns * upright.rows ? across : upright;
}

function pagesFor({ minX, minY, maxX, maxY }: Box, paper: TemplatePaper): PageSize[] {
  const needed = { width: maxX - minX + AROUND.width, height: maxY - minY + AROUND.height };
  const most = (length: number) => Math.min(LONGEST, Math.ceil(length));
  if (paper === 'one-sheet') return [{ width: most(needed.width), height: most(needed.height) }];
  const roll = ROLLS[paper];
  if (roll !== undefined) {
    return [
      { width: roll, height: most(needed.height) },
      { width: most(needed.width), height: roll },
    ];
  }
  const { width, height } = SIZES[paper as keyof typeof SIZES];
  return [
    { width, height },
    { width: height, height: width },
  ];
}

function gridOn(box: Box, page: PageSize, whole: readonly Box[]): TileGrid {
  const window = {
    minX: EDGE + STRIP,
    minY: EDGE + FOOT + STRIP,
    maxX: page.width - EDGE,
    maxY: page.height - EDGE,
  };
  const step = {
    width: window.maxX - window.minX - OVERLAP,
    height: window.maxY - window.minY - OVERLAP,
  };
  const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
  const columns = Math.max(1, Math.ceil((wide - OVERLAP - ROUNDING) / step.width));
  const rows = Math.max(1, Math.ceil((high - OVERLAP - ROUNDING) / step.height));
  const most = { width: step.width + OVERLAP, height: step.height + OVERLAP };
  const needed = neededWhole(whole, most);
  const laidWith = ([right, up]: (typeof MORE)[number]) =>
    bestShift(box, { page, window, columns: columns + right, rows: rows + up, step }, whole);
  for (const more of MORE) {
    const laid = laidWith(more);
    if (needed.every((each) => isInOneTile(each, laid))) return laid;
  }
  return laidWith([1, 1]);
}

/** The most serious, where a tile is large enough for it; else all that is. */
function neededWhole([first, ...others]: readonly Box[], most: PageSize): readonly Box[] {
  const hasRoom = ({ minX, maxX, minY, maxY }: Box) =>
    maxX - minX <= most.width && maxY - minY <= most.height;
  if (first === undefined) return [];
  return hasRoom(first) ? [first] : others.filter(hasRoom);
}

/** What is left over goes half to each side, or otherwise where that keeps more words whole. */
function bestShift(box: Box, grid: Omit<TileGrid, 'origin'>, whole: readonly Box[]): TileGrid {
  const { columns, rows, step } = grid;
  const spareX = columns * step.width + OVERLAP - (box.maxX - box.minX);
  const spareY = rows * step.height + OVERLAP - (box.maxY - box.minY);
  const shares = [0.5, ...Array.from({ length: SHIFTS + 1 }, (_, index) => index / SHIFTS)];
  let best: TileGrid | undefined;
  let most = Number.NEGATIVE_INFINITY;
  for (const x of shares) {
    for (const y of shares) {
      const laid = { ...grid, origin: { x: box.minX - spareX * x, y: box.minY - spareY * y } };
      // The first weighs as much as all others.
      const worth = whole.reduce(
        (sum, each, index) => sum + (isInOneTile(each, laid) ? (index === 0 ? whole.length : 1) : 0),
        0,
      );
      if (worth > most) {
        best = laid;
        most = worth;
      }
    }
  }
  return best ?? { ...grid, origin: { x: box.minX, y: box.minY } };
}

/** Whether one tile holds all of a box. */
export function isInOneTile(box: Box, { origin, step, columns, rows }: TileGrid): boolean {
  const isIn = (from: number, to: number, way: { least: number; step: number; count: number }): boolean => {
    const last = Math.min(way.count - 1, Math.floor((from - way.least) / way.step));
    // The tile that it begins in; the one before reaches into that by the overlap.
    return [last, last - 1].some((tile) => tile >= 0 && to <= way.least + (tile + 1) * way.step + OVERLAP);
  };
  return (
    isIn(box.minX, box.maxX, { least: origin.x, step: step.width, count: columns }) &&
    isIn(box.minY, box.maxY, { least: origin.y, step: step.height, count: rows })
  );
}

/** Of a tile what no neighbour is nearer to: half of each overlap. */
export function ownBox({ column, row, box }: Tile, { columns, rows }: TileGrid): Box {
  const half = OVERLAP / 2;
  return {
    minX: box.minX + (column > 0 ? half : 0),
    maxX: box.maxX - (column < columns - 1 ? half : 0),
    minY: box.minY + (row > 0 ? half : 0),
    maxY: box.maxY - (row < rows - 1 ? half : 0),
  };
}

/** Whether all of a box lies in another. */
export function holds(outer: Box, inner: Box): boolean {
  return (
    inner.minX >= outer.minX &&
    inner.maxX <= outer.maxX &&
    inner.minY >= outer.minY &&
    inner.maxY <= outer.maxY
  );
}

/** Row by row from below, each from the left. */
export function tilesOf(grid: TileGrid): Tile[] {
  const { columns, rows, origin, step } = grid;
  const isTiled = columns * rows > 1;
  return Array.from({ length: columns * rows }, (_, index) => {
    const [column, row] = [index % columns, Math.floor(index / columns)];
    const minX = origin.x + column * step.width;
    const minY = origin.y + row * step.height;
    const corner = { x: minX + OVERLAP / 2, y: minY + OVERLAP / 2 };
    const marks = [0, 1].flatMap((up) =>
      [0, 1].map((right) => ({ x: corner.x + right * step.width, y: corner.y + up * step.height })),
    );
    return {
      name: tileName(column, row),
      column,
      row,
      box: { minX, minY, maxX: minX + step.width + OVERLAP, maxY: minY + step.height + OVERLAP },
      marks: isTiled ? marks : [],
    };
  });
}

/** A to Z, then AA to AZ and so on. */
export function tileName(column: number, row: number): string {
  const letter = String.fromCharCode(65 + (column % 26));
  const before = column < 26 ? '' : String.fromCharCode(64 + Math.floor(column / 26));
  return `${before}${letter}${row + 1}`;
}

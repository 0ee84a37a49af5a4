/**
 * A sheet laid out on pages at true size. Tiles overlap; registration marks stand where the corners of four tiles come together,
 * in the middle of the overlap, so that each mark is printed on every page that it joins.
 */

import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
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

/** ISO 216, the short side across; the two smallest are the pen's own. */
const SIZES: Readonly<Record<TemplatePaper, PageSize>> = {
  ...PAPER,
  a2: { width: 420, height: 594 },
  a1: { width: 594, height: 841 },
  a0: { width: 841, height: 1189 },
};

/** The way of turning the paper that takes fewer pages. */
export function tileGrid(box: Box, paper: TemplatePaper): TileGrid {
  const { width, height } = SIZES[paper];
  const [upright, across] = [gridOn(box, { width, height }), gridOn(box, { width: height, height: width })];
  return across.columns * across.rows < upright.columns * upright.rows ? across : upright;
}

function gridOn(box: Box, page: PageSize): TileGrid {
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
  const columns = Math.max(1, Math.ceil((wide - OVERLAP) / step.width));
  const rows = Math.max(1, Math.ceil((high - OVERLAP) / step.height));
  // What is left over goes half to each side.
  const origin = {
    x: box.minX - (columns * step.width + OVERLAP - wide) / 2,
    y: box.minY - (rows * step.height + OVERLAP - high) / 2,
  };
  return { page, window, columns, rows, origin, step };
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

/**
 * Pages of a template, by hand. An A4 sheet leaves a window of 185 by 260 mm upright and 272 by 173 across: 8 mm white all round, 9 for a
 * scale bar at the left, 12 and 9 below. Tiles overlap by 16, so that they step by 169 and 244, or by 256 and 157.
 */
import { describe, expect, test } from 'vitest';
import type { Box } from '#geometry/box.ts';
import { holds, isInOneTile, tileGrid, tileName, tilesOf } from '#handoff/template/tile-pages.ts';

const box = (minX: number, minY: number, maxX: number, maxY: number): Box => ({ minX, minY, maxX, maxY });

describe('the grid of pages', () => {
  test('one page where the template fits, with what is left over half to each side', () => {
    expect(tileGrid(box(10, 20, 190, 270), 'a4')).toEqual({
      page: { width: 210, height: 297 },
      window: box(17, 29, 202, 289),
      columns: 1,
      rows: 1,
      origin: { x: 7.5, y: 15 },
      step: { width: 169, height: 244 },
    });
    expect(tileGrid(box(5, -40, 265, 110), 'a4')).toMatchObject({
      page: { width: 297, height: 210 },
      columns: 1,
      rows: 1,
      origin: { x: -1, y: -51.5 },
    });
  });

  test('a page is full to the last figure of 185 by 260', () => {
    expect(tileGrid(box(30, 40, 215, 300), 'a4')).toMatchObject({ columns: 1, rows: 1 });
    expect(tileGrid(box(30, 40, 215.001, 300), 'a4')).toMatchObject({ columns: 2, rows: 1 });
    expect(tileGrid(box(30, 40, 215, 300.001), 'a4')).toMatchObject({ columns: 1, rows: 2 });
  });

  test('the paper is turned where that takes fewer pages, and stays upright where it takes as many', () => {
    // Three by two or two by three; two by two or one by two.
    expect(tileGrid(box(0, 0, 500, 380), 'a4')).toMatchObject({ columns: 3, rows: 2, page: { width: 210 } });
    expect(tileGrid(box(0, 0, 260, 300), 'a4')).toMatchObject({ columns: 1, rows: 2, page: { width: 297 } });
  });

  test('one sheet is as large as the template needs, and no longer than a PDF page may be', () => {
    const one = tileGrid(box(7, 9, 7 + 123.4, 9 + 456.7), 'one-sheet');
    expect(one).toMatchObject({ page: { width: 149, height: 494 }, columns: 1, rows: 1 });
    expect(tileGrid(box(0, 0, 6000, 100), 'one-sheet')).toMatchObject({
      page: { width: 5000, height: 137 },
      columns: 2,
      rows: 1,
    });
  });

  test('a roll is as wide as it is and as long as needed, along or across', () => {
    const page = (wide: number, high: number) => tileGrid(box(3, 4, 3 + wide, 4 + high), 'roll-610').page;
    expect(page(900, 400)).toEqual({ width: 925, height: 610 });
    expect(page(400, 900)).toEqual({ width: 610, height: 937 });
  });

  test.each([
    ['a2', 420, 594],
    ['a1', 594, 841],
    ['a0', 841, 1189],
  ] as const)('%s is %d by %d mm (ISO 216)', (paper, width, height) => {
    expect(tileGrid(box(0, 0, 90, 120), paper).page).toEqual({ width, height });
  });
});

describe('words that are not to be cut', () => {
  // 300 by 200 takes two pages upright, with 54 mm to spare across: laid in the middle they meet from 142 to 158 of its width.
  const part = box(100, 300, 400, 500);
  const words = (from: number, to: number) => box(100 + from, 350, 100 + to, 360);
  const shiftFor = (...whole: readonly Box[]) => {
    const { page, columns, rows, origin } = tileGrid(part, 'a4', whole);
    expect([page.width, columns, rows]).toEqual([210, 2, 1]);
    return 100 - origin.x;
  };

  test('the grid stays in the middle where none is cut, else is moved by eighths until fewest are', () => {
    expect(tileGrid(part, 'a4', [words(20, 60)])).toMatchObject({
      columns: 2,
      rows: 1,
      origin: { x: 73, y: 270 },
    });
    expect(shiftFor(words(140, 170))).toBe(0);
    // The second is cut at 0, and neither at an eighth.
    expect(shiftFor(words(140, 170), words(168, 188))).toBe(6.75);
    expect(tileGrid(part, 'a4', [words(140, 170)]).origin.y).toBe(270);
  });

  test('up and down as well', () => {
    // 160 by 400: two pages one above the other, with 104 mm to spare; in the middle they meet from 192 to 208.
    const tall = box(100, 300, 260, 700);
    expect(tileGrid(tall, 'a4')).toMatchObject({ columns: 1, rows: 2, origin: { x: 87.5, y: 248 } });
    expect(tileGrid(tall, 'a4', [box(120, 490, 150, 510)]).origin).toEqual({ x: 87.5, y: 300 });
  });

  test('the first counts as much as all others', () => {
    // It is whole at 0 and at 54 only, the second from 9 on, the third up to 50.
    expect(shiftFor(words(120, 182), words(160, 187), words(112, 135))).toBe(0);
    expect(shiftFor(words(160, 187), words(120, 182), words(112, 135))).toBe(27);
    expect(shiftFor(words(120, 182), words(160, 187))).toBe(54);
  });

  test('a column and a row more where the first is cut however the grid is laid', () => {
    // 345 wide leaves 9 mm to spare: 31 mm across the joint are cut at every shift. 180 high, it is too high for paper laid across.
    const first = box(100 + 159, 310, 100 + 190, 490);
    const wide = box(100, 300, 445, 500);
    expect(tileGrid(wide, 'a4')).toMatchObject({ columns: 2, rows: 1 });
    const grid = tileGrid(wide, 'a4', [first]);
    expect(grid).toMatchObject({ columns: 3, rows: 1, page: { width: 210 } });
    expect(isInOneTile(first, grid)).toBe(true);
  });
});

describe('tiles of a grid', () => {
  // Across from 10 to 126, 110 to 226 and 210 to 326; up from 20 to 116 and 100 to 196.
  const grid = {
    page: { width: 141, height: 133 },
    window: box(17, 29, 133, 125),
    columns: 3,
    rows: 2,
    origin: { x: 10, y: 20 },
    step: { width: 100, height: 80 },
  };

  test('row by row from below, with marks where four come together', () => {
    const tiles = tilesOf(grid);
    expect(tiles.map(({ name, column, row }) => [name, column, row])).toEqual([
      ['A1', 0, 0],
      ['B1', 1, 0],
      ['C1', 2, 0],
      ['A2', 0, 1],
      ['B2', 1, 1],
      ['C2', 2, 1],
    ]);
    expect(tiles[5]?.box).toEqual(box(210, 100, 326, 196));
    expect(tiles[1]?.marks).toEqual([
      { x: 118, y: 28 },
      { x: 218, y: 28 },
      { x: 118, y: 108 },
      { x: 218, y: 108 },
    ]);
    expect(tilesOf({ ...grid, rows: 1 })[0]?.marks).toHaveLength(4);
    expect(tilesOf({ ...grid, columns: 1 })[0]?.marks).toHaveLength(4);
    expect(tilesOf({ ...grid, columns: 1, rows: 1 })[0]?.marks).toEqual([]);
  });

  test.each([
    [10, 126, true],
    [9, 20, false],
    [5, 20, false],
    [109, 126, true],
    [109, 127, false],
    [110, 226, true],
    [112, 125, true],
    [210, 326, true],
    [209, 227, false],
    [310, 327, false],
    [327, 330, false],
  ])('words from %d to %d across are whole in one tile: %s', (from, to, isWhole) => {
    expect(isInOneTile(box(from, 30, to, 40), grid)).toBe(isWhole);
  });

  test.each([
    [20, 116, true],
    [99, 116, true],
    [99, 117, false],
    [100, 196, true],
    [150, 197, false],
  ])('words from %d to %d up are whole in one tile: %s', (from, to, isWhole) => {
    expect(isInOneTile(box(30, from, 40, to), grid)).toBe(isWhole);
  });

  test('words are looked for from where the first tile begins', () => {
    // From 60 to 176.
    expect(isInOneTile(box(155, 30, 170, 40), { ...grid, origin: { x: 60, y: 20 } })).toBe(true);
  });

  test('their columns go on after Z with AA', () => {
    expect([tileName(25, 0), tileName(26, 3), tileName(51, 0), tileName(52, 8)]).toEqual([
      'Z1',
      'AA4',
      'AZ1',
      'BA9',
    ]);
  });

  test('a box holds another up to its own borders, and none that leaves it on any side', () => {
    const outer = box(10, 20, 70, 60);
    expect(holds(outer, outer)).toBe(true);
    for (const side of [{ minX: 9 }, { maxX: 71 }, { minY: 19 }, { maxY: 61 }])
      expect(holds(outer, { ...outer, ...side })).toBe(false);
  });
});

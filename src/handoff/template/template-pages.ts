/**
 * template.pdf: of every template a map, and the template at 1 : 1, on as many pages as its sheet needs, to print on film or paper and
 * cut or compare by. Each page has its tile's name and neighbours, registration marks, the plan's hash, and a bar of 100 mm along both
 * sides, for printers stretch paper too. Tiles that hold no more than its border or its key are not printed; words are printed where a tile holds
 * all of them.
 */
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxesMeet, boxOfSpans } from '#geometry/box.ts';
import { type Point, subtract } from '#geometry/point.ts';
import { lineSpan, type Path, type Span } from '#geometry/span.ts';
import { inBoth, type PaperFigures } from '#handoff/paper-figures.ts';
import type { SheetFonts } from '#handoff/pdf/load-fonts.ts';
import { makePdfPen } from '#handoff/pdf/pdf-pen.ts';
import type { Pen, Stroke } from '#handoff/pdf/pen.ts';
import { shortened } from '#handoff/pdf/shortened.ts';
import { boxOfText, type InkText } from './ink.ts';
import { templateLabel } from './template-label.ts';
import { drawMap } from './template-map.ts';
import type { TemplateSet } from './template-set.ts';
import { circleOf } from './template-sheet.ts';
import { templateTiles } from './template-tiles.ts';
import { EDGE, holds, STRIP, type Tile, type TileGrid, tileName } from './tile-pages.ts';

export interface TemplatePagesInput {
  readonly set: TemplateSet;
  readonly planHash: string;
  readonly date: string | undefined;
  /** Those of all sheets of the hand-off. */
  readonly fonts?: SheetFonts | undefined;
}

const INK = '#000000';
/** mm on paper */
const EDGE_STROKE = 0.25;
const SLOT_STROKE = 0.13;
const MARK_STROKE = 0.25;
/** Capitals are seven tenths of the letters' body. */
const BODY = 1 / 0.7;
const BAR = 100;
/** Between what stands left and right in the foot. */
const GAP = 6;

export async function templatePages({ set, planHash, date, fonts }: TemplatePagesInput): Promise<Uint8Array> {
  const { input, templates } = set;
  const pen = await makePdfPen({ title: `Scribe templates, ${input.name}`, date, fonts });
  templates.forEach((_, index) => {
    const shapes = shapesOf(set, index + 1, planHash);
    const { grid, tiles } = templateTiles(set, index + 1);
    const { label } = input;
    const name = `${label.owner.part}, ${label.side}`;
    drawMap(pen, { set, number: index + 1, planHash, grid, printed: tiles.map((tile) => tile.name) });
    const count = `template ${index + 1} of ${templates.length}`;
    for (const tile of tiles)
      drawTile(pen, { grid, tile, shapes, figures: label.figures, name, count, planHash, date });
  });
  return pen.finish();
}

/** Something to draw, and where. */
interface Shape {
  /** Words are drawn whole or not at all. */
  readonly isWords?: boolean;
  readonly box: Box;
  readonly draw: (pen: Pen, moved: (point: Point) => Point) => void;
}

function shapesOf(set: TemplateSet, number: number, planHash: string): Shape[] {
  const { sheet, templates } = set;
  const label = templateLabel(set, number, planHash);
  const slots = itemAt(templates, number - 1);
  const marks = itemAt(set.marks, number - 1);
  return [
    ...slots.map(({ outline, stage }) =>
      pathsShape(
        outline.map((spans) => ({ closed: true, spans })),
        { stroke: { width: SLOT_STROKE, color: INK }, fill: stage.color },
      ),
    ),
    ...[sheet.outline, ...sheet.holes.map(circleOf), label.square.spans].map((spans) =>
      pathsShape([{ closed: true, spans }], { stroke: { width: EDGE_STROKE, color: INK } }),
    ),
    ...sheet.holes.map(({ center, radius }) =>
      pathsShape(crossAt(center, radius * 1.4), { stroke: { width: SLOT_STROKE, color: INK } }),
    ),
    ...[...marks.map((mark) => mark.lines), label.lines]
      .filter((lines) => lines.length > 0)
      .map((lines) =>
        pathsShape(
          lines.map(({ path }) => path),
          { stroke: { width: MARK_STROKE, color: INK } },
        ),
      ),
    ...label.lines.map(({ path, stage }) =>
      pathsShape([path], { stroke: { width: MARK_STROKE * 0.8, color: stage?.color ?? INK } }),
    ),
    ...(sheet.part.length === 0
      ? []
      : [
          pathsShape(
            sheet.part.map((spans) => ({ closed: true, spans })),
            { stroke: { width: EDGE_STROKE, color: INK, dash: [9, 3] } },
          ),
        ]),
    ...[...label.texts, ...marks.flatMap(({ texts }) => texts), ...itemAt(set.names, number - 1)].map(
      textShape,
    ),
  ];
}

function pathsShape(paths: readonly Path[], how: { readonly stroke: Stroke; readonly fill?: string }): Shape {
  return {
    box: boxOfSpans(paths.flatMap(({ spans }) => spans)),
    draw: (pen, moved) =>
      pen.paths(
        paths.map(({ closed, spans }) => ({ closed, spans: spans.map((span) => movedSpan(span, moved)) })),
        how,
      ),
  };
}

function movedSpan(span: Span, moved: (point: Point) => Point): Span {
  const ends = { start: moved(span.start), end: moved(span.end) };
  return span.kind === 'line' ? { ...span, ...ends } : { ...span, ...ends, center: moved(span.center) };
}

function textShape(words: InkText): Shape {
  const { at, height, text } = words;
  return {
    isWords: true,
    box: boxOfText(words),
    draw: (pen, moved) => pen.text(text, moved(at), { size: height * BODY }),
  };
}

interface TilePage {
  readonly grid: TileGrid;
  readonly tile: Tile;
  readonly shapes: readonly Shape[];
  readonly figures: PaperFigures;
  readonly name: string;
  readonly count: string;
  readonly planHash: string;
  readonly date: string | undefined;
}

function drawTile(pen: Pen, { grid, tile, shapes, figures, ...head }: TilePage): void {
  const { page, window } = grid;
  const shift = subtract({ x: window.minX, y: window.minY }, { x: tile.box.minX, y: tile.box.minY });
  const moved = ({ x, y }: Point): Point => ({ x: x + shift.x, y: y + shift.y });
  pen.page(page);
  pen.within(window, () => {
    for (const { box, draw, isWords } of shapes) {
      if (isWords === true ? holds(tile.box, box) : boxesMeet(box, tile.box)) draw(pen, moved);
    }
  });
  for (const mark of tile.marks.map(moved)) {
    const ring = circleOf({ center: mark, radius: 2 });
    pen.paths([...crossAt(mark, 4), { closed: true, spans: ring }], { stroke: { width: 0.18, color: INK } });
  }
  bars(pen, window, figures);
  foot(pen, { grid, tile, ...head });
}

/** Which template of which plan, and which tile of it. */
function foot(
  pen: Pen,
  { grid, tile, name, count, planHash, date }: Omit<TilePage, 'shapes' | 'figures'>,
): void {
  const [left, right, y] = [EDGE + STRIP, grid.page.width - EDGE, EDGE + 1];
  const [large, bold] = [{ size: 4 }, { size: 4, isBold: true }];
  const last = tileName(grid.columns - 1, grid.rows - 1);
  const page = tile.marks.length === 0 ? 'on one page' : `tile ${tile.name} of ${last}`;
  const taken = pen.textWidth(`   ${count}`, bold) + pen.textWidth(page, large);
  const said = shortened(pen, name, { ...bold, width: right - left - taken - GAP });
  pen.text(`${said}   ${count}`, { x: left, y: y + 6 }, bold);
  pen.text(page, { x: right, y: y + 6 }, { ...large, align: 'right' });
  pen.text(`plan ${planHash}`, { x: left, y: y + 1 }, { size: 2.2 });
  const around = [neighboursOf(grid, tile), date].filter(Boolean).join('   ');
  pen.text(around, { x: right, y: y + 1 }, { size: 2.6, align: 'right' });
}

function crossAt({ x, y }: Point, half: number): Path[] {
  return [
    lineSpan({ x: x - half, y }, { x: x + half, y }),
    lineSpan({ x, y: y - half }, { x, y: y + half }),
  ].map((span) => ({ closed: false, spans: [span] }));
}

/** Left of the window and below it. */
function bars(pen: Pen, { minX, minY }: Box, figures: PaperFigures): void {
  const stroke = { width: 0.25, color: INK };
  const [x, y] = [minX - STRIP / 2, minY - STRIP / 2];
  pen.line({ x: minX, y }, { x: minX + BAR, y }, stroke);
  pen.line({ x, y: minY }, { x, y: minY + BAR }, stroke);
  for (const at of [0, BAR]) {
    pen.line({ x: minX + at, y: y - 1.5 }, { x: minX + at, y: y + 1.5 }, stroke);
    pen.line({ x: x - 1.5, y: minY + at }, { x: x + 1.5, y: minY + at }, stroke);
  }
  pen.text(`${inBoth(BAR, figures)} when printed true`, { x: minX + BAR + 3, y: y - 0.9 }, { size: 2.6 });
  pen.text(inBoth(BAR, figures), { x: x + 0.9, y: minY + BAR + 3 }, { size: 2.6, turn: Math.PI / 2 });
}

function neighboursOf({ columns, rows }: TileGrid, { column, row }: Tile): string {
  return [
    column > 0 ? `left ${tileName(column - 1, row)}` : '',
    column < columns - 1 ? `right ${tileName(column + 1, row)}` : '',
    row > 0 ? `below ${tileName(column, row - 1)}` : '',
    row < rows - 1 ? `above ${tileName(column, row + 1)}` : '',
  ]
    .filter(Boolean)
    .join(', ');
}

/**
 * The map of a template, before its tiles: the whole of it on one page, not true to size, with the tiles by name, its stages with how many
 * lines each has, and what to look at before the first cut.
 */

import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpans } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, lineSpan, type Path, type Span } from '#geometry/span.ts';
import { inBoth } from '#handoff/paper-figures.ts';
import { formTable } from '#handoff/pdf/form-table.ts';
import { drawPapers, paperRoom, remark, sectionHead } from '#handoff/pdf/paper-book.ts';
import { TYPE } from '#handoff/pdf/paper-type.ts';
import { drawMarkSample, ratio } from '#handoff/pdf/part-marks.ts';
import type { PageSize, Paper, Pen } from '#handoff/pdf/pen.ts';
import { type Block, gap, together } from '#handoff/pdf/sheet-book.ts';
import { INK } from '#handoff/pdf/sheet-ink.ts';
import { templateLabel } from './template-label.ts';
import type { TemplateSet } from './template-set.ts';
import { circleOf } from './template-sheet.ts';
import { type TileGrid, tileName, tilesOf } from './tile-pages.ts';

interface MapInput {
  readonly set: TemplateSet;
  /** From 1. */
  readonly number: number;
  readonly planHash: string;
  readonly grid: TileGrid;
  /** Names of the tiles that are printed. */
  readonly printed: readonly string[];
}

/** mm on the page, at least and at most. */
const PICTURE = { least: 60, most: 120 };
const GAP = 3;
/** Above and below the picture. */
const EDGES = 4;

export function drawMap(pen: Pen, input: MapInput): void {
  const { set, number, planHash } = input;
  const { label, choices } = set.input;
  const paper: Paper = choices.paper === 'letter' ? 'letter' : 'a4';
  const { width, height } = paperRoom(paper);
  const below = [
    gap(GAP),
    ...stageTable(pen, input, width),
    gap(GAP),
    ...together(before(pen, input, width)),
  ];
  // What to look at before the first cut stands with the map, however many stages there are.
  const left = height - EDGES - below.reduce((sum, block) => sum + block.height, 0);
  const most = Math.max(PICTURE.least, Math.min(PICTURE.most, left));
  const picture = mapPicture(input, { width, height: most });
  drawPapers(pen, {
    paper,
    head: {
      title: `Scribe template ${number} of ${set.templates.length}`,
      ...label.owner,
      isNamedAtOnce: true,
      planHash,
      page: 'map',
    },
    parts: [
      {
        subtitle: `Map, ${ratio(picture.scale)}: not true size`,
        blocks: [picture, ...below],
      },
    ],
  });
}

function mapPicture(
  { set, number, planHash, grid, printed }: MapInput,
  { width, height: most }: PageSize,
): Block & { readonly scale: number } {
  const { sheet } = set;
  const box = boxOfSpans(sheet.outline);
  const scale = Math.min(width / (box.maxX - box.minX), most / (box.maxY - box.minY));
  const height = (box.maxY - box.minY) * scale;
  return {
    scale,
    height: height + EDGES,
    draw: (pen, { left, top }) => {
      const shift = left + (width - (box.maxX - box.minX) * scale) / 2;
      const place = ({ x, y }: Point): Point => ({
        x: shift + (x - box.minX) * scale,
        y: top - 2 - (box.maxY - y) * scale,
      });
      const path = (spans: Loop | readonly Span[], closed = true): Path => ({
        closed,
        spans: spans.map((span) => scaled(span, place, scale)),
      });
      for (const { outline, stage } of itemAt(set.templates, number - 1)) {
        pen.paths(
          outline.map((loop) => path(loop)),
          { fill: stage.color, stroke: { width: 0.12, color: INK } },
        );
      }
      pen.paths([path(sheet.outline)], { stroke: { width: 0.4, color: INK } });
      if (sheet.part.length > 0) {
        pen.paths(
          sheet.part.map((loop) => path(loop)),
          { stroke: { width: 0.2, color: INK, dash: [3, 1] } },
        );
      }
      const label = templateLabel(set, number, planHash);
      for (const { path: line, stage } of label.lines) {
        pen.paths([path(line.spans, line.closed)], { stroke: { width: 0.15, color: stage?.color ?? INK } });
      }
      pen.paths([path(label.square.spans)], { stroke: { width: 0.15, color: INK } });
      const own = label.texts.slice(0, label.texts.length - sheet.holes.length);
      for (const { at, height: capitals, text } of [...own, ...itemAt(set.names, number - 1)]) {
        pen.text(text, place(at), { size: (capitals * scale) / 0.7 });
      }
      for (const { name, center, radius } of sheet.holes) {
        const { x, y } = place(center);
        pen.paths([path(circleOf({ center, radius }))], { stroke: { width: 0.2, color: INK } });
        pen.line({ x: x - 2, y }, { x: x + 2, y }, { width: 0.2, color: INK });
        pen.line({ x, y: y - 2 }, { x, y: y + 2 }, { width: 0.2, color: INK });
        pen.text(name, { x: x + 2.4, y: y + 1 }, { size: TYPE.text, isBold: true });
      }
      const room = { minX: left, maxX: left + width, minY: top - height - EDGES, maxY: top };
      if (printed.length > 1) pen.within(room, () => drawTiles(pen, { grid, printed, place, room }));
    },
  };
}

function scaled(span: Span, place: (point: Point) => Point, scale: number): Span {
  const ends = { start: place(span.start), end: place(span.end) };
  return span.kind === 'line'
    ? { kind: 'line', ...ends }
    : { ...span, ...ends, center: place(span.center), radius: span.radius * scale };
}

interface Tiled extends Pick<MapInput, 'grid' | 'printed'> {
  readonly place: (point: Point) => Point;
  /** Of the picture, on the page. */
  readonly room: Box;
}

/** Borders half way through the overlaps, names in their upper left corners; those that are not printed dashed. */
function drawTiles(pen: Pen, { grid, printed, place, room }: Tiled): void {
  for (const tile of tilesOf(grid)) {
    const isLeftOut = !printed.includes(tile.name);
    const corners = cornersOf(inner(tile.box, grid)).map(place);
    const spans = corners.map((corner, index) => lineSpan(corner, itemAt(corners, (index + 1) % 4)));
    const stroke = {
      width: 0.15,
      color: '#5a5a5a',
      dash: isLeftOut ? ([1, 1] as const) : ([4, 1.5] as const),
    };
    pen.paths([{ closed: true, spans }], { stroke });
    // A tile that is larger than the picture has its name within it.
    const corner = itemAt(corners, 3);
    const [x, y] = [Math.max(corner.x, room.minX), Math.min(corner.y, room.maxY)];
    const words = `${tileName(tile.column, tile.row)}${isLeftOut ? ' not printed' : ''}`;
    pen.text(words, { x: x + 0.8, y: y - 3.4 }, { size: TYPE.note, isBold: !isLeftOut, color: '#5a5a5a' });
  }
}

function inner(box: Box, { step }: TileGrid): Box {
  const x = (box.maxX - box.minX - step.width) / 2;
  const y = (box.maxY - box.minY - step.height) / 2;
  return { minX: box.minX + x, maxX: box.maxX - x, minY: box.minY + y, maxY: box.maxY - y };
}

function cornersOf({ minX, minY, maxX, maxY }: Box): Point[] {
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

function stageTable(pen: Pen, { set, number }: MapInput, width: number): Block[] {
  const slots = itemAt(set.templates, number - 1);
  const { figures } = set.input.label;
  const stages = set.input.plan.stages.filter((stage) =>
    slots.some((slot) => slot.stage.number === stage.number),
  );
  return formTable(pen, {
    columns: [
      { share: 20, head: 'Stage', align: 'middle', isBold: true },
      { share: 34, head: 'Mark' },
      { share: 30, head: 'Colour' },
      { share: 40, head: `Etched to, ${figures.named}`, align: 'right' },
      { share: 56, head: 'Lines of the stage, on this template' },
    ],
    rows: stages.map((stage) => {
      const here = new Set(slots.filter((slot) => slot.stage.number === stage.number).map(({ line }) => line))
        .size;
      return [
        String(stage.number),
        { draw: (to, box) => drawMarkSample(to, box, stage.number) },
        {
          draw: (to, { minX, maxX, minY, maxY }) =>
            to.rectangle(
              { minX: minX + 2, maxX: maxX - 2, minY: minY + 2.2, maxY: maxY - 2.2 },
              { fill: stage.color },
            ),
        },
        figures.length(stage.level, { isGiven: true }),
        `${stage.lines.length}, ${here} here`,
      ];
    }),
    width,
    row: 6.6,
  });
}

function before(pen: Pen, { set, grid, printed }: MapInput, width: number): Block[] {
  const { sheet } = set;
  const holes = sheet.holes.map(({ name }) => name).join(', ');
  const own = sheet.holes.filter(({ isOwn }) => isOwn === true).map(({ name }) => name);
  const bar = inBoth(100, set.input.label.figures);
  const leftOut = tilesOf(grid).length - printed.length;
  const tiled =
    printed.length > 1
      ? ` Printed on ${grid.columns} × ${grid.rows} tiles${leftOut > 0 ? `, but for ${leftOut} that would hold no more than the template’s border or its key of stages, as above` : ''}; the bar on each reads ${bar}.`
      : ` Printed on one sheet; the bar on it reads ${bar}.`;
  return [
    sectionHead(pen, 'Before you cut', '', width),
    remark(
      pen,
      `**Holes ${holes} on their pins:** no other way up or round fits them. ${own.length > 0 ? `${own.join(', ')} ${own.length === 1 ? 'is a hole' : 'are holes'} of the part itself.` : 'They stand beside the part.'} The part’s edge meets the long-dashed line all round.${tiled}`,
      width,
    ),
  ];
}

/**
 * What a template states of itself, in a field of its own below the part: whose it is, what its offsets were made for, which side is up, the
 * square and the ways between tooling holes by which its scale is checked, and each stage's colour and mark. The same lines and words
 * for DXF and paper.
 */

import { itemAt } from '#geometry/assert.ts';
import type { Box } from '#geometry/box.ts';
import { distance, type Point } from '#geometry/point.ts';
import { lineSpan, type Path } from '#geometry/span.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import { eachUnit } from '#handoff/paper-figures.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { stageMark, tickPlaces } from '#plan/stage-mark.ts';
import type { InkLine, InkText } from './ink.ts';
import type { TemplateInput, UnnamedSet } from './template-set.ts';
import { rectangleOf } from './template-sheet.ts';
import { type LabelWords, LETTERS, templateLines } from './template-words.ts';
import type { ToolingHole } from './tooling-holes.ts';

export interface TemplateLabel {
  readonly texts: readonly InkText[];
  /** Those of them that belong to the key of stages. */
  readonly keyTexts: readonly InkText[];
  readonly lines: readonly InkLine[];
  /** The scale-check square. */
  readonly square: Path;
}

/** mm on the part: long enough to find a tenth of a per cent with a rule, short enough for any sheet. */
const SQUARE = 50;
const INSET = 5;
/** Capitals, so that letters are 6 mm high with what stands above and below. */
const TEXT = 4.2;
const ROW = 7.4;
const BIG = 8;
/** A letter of capitals' height wide at most, whatever the font. */
const WORDS = LETTERS * TEXT;
const SIDE_UP = { width: 104, height: 30 };
const SCALE = SQUARE * 1.1 + 2;
const MOST_WIDTH = 360;
/** Of the legend's columns, and the line in it that shows the mark. */
const COLUMN = 84;
const SAMPLE = 26;

interface Layout {
  readonly width: number;
  readonly height: number;
  /** From the field's upper left corner, y down. */
  readonly sideUp: Point;
  readonly square: Point;
  readonly legend: Point;
  readonly columns: number;
}

/** Words at the upper left; beside them, or below, THIS SIDE UP and the square; the legend under all. */
function layoutOf(rows: number, stages: number, partWidth: number): Layout {
  const words = rows * ROW + 2;
  const isWide = partWidth >= WORDS + SIDE_UP.width + 4 * INSET;
  const width = Math.min(MOST_WIDTH, Math.max(WORDS + 2 * INSET, isWide ? partWidth : 0));
  const right = INSET * 3 + WORDS;
  const sideUp = isWide ? { x: right, y: INSET } : { x: INSET, y: INSET + words };
  const square = isWide
    ? { x: right, y: INSET * 2 + SIDE_UP.height }
    : { x: INSET * 2 + SIDE_UP.width, y: INSET + words };
  const below = Math.max(INSET + words, sideUp.y + SIDE_UP.height, square.y + SCALE) + 2;
  const columns = Math.max(1, Math.floor((width - 2 * INSET) / COLUMN));
  const legend = { x: INSET, y: below };
  return {
    width,
    height: below + Math.ceil(stages / columns) * (ROW + 1) + INSET,
    sideUp,
    square,
    legend,
    columns,
  };
}

/** Rows of the words that follow from the template itself. */
const OWN_ROWS = 5;

/** The field of the label below a part so wide. */
export function labelSize(
  { label, plan }: Pick<TemplateInput, 'label' | 'plan'>,
  partWidth: number,
): { readonly width: number; readonly height: number } {
  return layoutOf(label.lines.length + OWN_ROWS, plan.stages.length, partWidth);
}

export function templateLabel(set: UnnamedSet, number: number, planHash: string): TemplateLabel {
  const { sheet, input, templates } = set;
  const { stretch } = input.choices;
  const { minX, maxX, maxY } = sheet.label;
  const { label, plan } = input;
  const layout = layoutOf(label.lines.length + OWN_ROWS, plan.stages.length, maxX - minX - ROUNDING);
  const [width, height] = [SQUARE * stretch.x, SQUARE * stretch.y];
  const at = ({ x, y }: Point): Point => ({ x: minX + x, y: maxY - y });
  const corner = at(layout.square);
  const square = rectangleOf({
    minX: corner.x,
    maxX: corner.x + width,
    minY: corner.y - height,
    maxY: corner.y,
  });
  const own = templateLines(label, { number, of: templates.length, planHash, size: stretchWords(stretch) });
  const rows = [label.owner.part.slice(0, LETTERS), ...label.lines, ...own, baseline(set)];
  const shown = [...new Set(itemAt(templates, number - 1).map(({ stage }) => stage))];
  const legend = shown.map((stage, index) =>
    legendRow(stage, index, { corner: at(layout.legend), layout, label }),
  );
  const sideUp = at(layout.sideUp);
  const frame = rectangleOf({
    minX: sideUp.x,
    maxX: sideUp.x + SIDE_UP.width,
    minY: sideUp.y - SIDE_UP.height,
    maxY: sideUp.y,
  });
  return {
    square: { closed: true, spans: square },
    keyTexts: legend.map(({ text }) => text),
    texts: [
      ...rows.map((text, index) => ({
        at: at({ x: INSET, y: INSET + TEXT + index * ROW }),
        height: Math.min(TEXT, WORDS / Math.max(1, text.length)),
        text,
      })),
      { at: { x: sideUp.x + 6, y: sideUp.y - 5 - BIG }, height: BIG, text: 'THIS SIDE UP' },
      {
        at: { x: sideUp.x + 6, y: sideUp.y - 20 },
        height: TEXT,
        text: `datum: hole ${sheet.holes[0]?.name ?? '–'}`,
      },
      { at: { x: sideUp.x + 6, y: sideUp.y - 27 }, height: TEXT, text: label.side },
      ...sizeOfSquare(label).map((text, row) => ({
        at: { x: corner.x + 2, y: corner.y - height + 2 + row * ROW * 0.8 },
        height: TEXT * 0.8,
        text,
      })),
      ...legend.map(({ text }) => text),
      ...sheet.holes.map((hole) => nameOfHole(hole).text),
    ],
    lines: [...legend.flatMap(({ lines }) => lines), { path: { closed: true, spans: frame } }],
  };
}

/** From its lower edge up. */
function sizeOfSquare({ figures }: LabelWords): string[] {
  const [millimetres, inches] = eachUnit(SQUARE, figures);
  return inches === undefined ? [`${millimetres} square`] : [`or ${inches} square`, String(millimetres)];
}

/** Right of the hole, and the box that no other ink may enter. */
export function nameOfHole({ name, center, radius }: ToolingHole): {
  readonly text: InkText;
  readonly box: Box;
} {
  const at = { x: center.x + radius + 1.5, y: center.y - TEXT / 2 };
  const box = { minX: at.x, minY: at.y, maxX: at.x + TEXT * name.length, maxY: at.y + TEXT };
  return { text: { at, height: TEXT, text: name }, box };
}

function stretchWords({ x, y }: { readonly x: number; readonly y: number }): string {
  return x === 1 && y === 1 ? 'true size' : `size to part: x ${x.toFixed(5)}, y ${y.toFixed(5)}`;
}

/** The ways between holes, to be measured. */
function baseline({ sheet, input }: UnnamedSet): string {
  const [a, b, c] = sheet.holes;
  const { figures } = input.label;
  const pairs = [
    [a, b],
    [b, c],
    [a, c],
  ] as const;
  const ways = pairs.flatMap(([from, to]) => {
    if (from === undefined || to === undefined) return [];
    const way = figures.lengths(distance(from.center, to.center), { tolerance: 0.5 })[0];
    return [`${from.name}-${to.name} ${way}`];
  });
  return `Holes ${ways.join(', ')} ${figures.units[0]}`;
}

function legendRow(
  stage: Stage,
  index: number,
  place: { readonly corner: Point; readonly layout: Layout; readonly label: LabelWords },
): { readonly text: InkText; readonly lines: InkLine[] } {
  const { corner, layout, label } = place;
  const x = corner.x + (index % layout.columns) * COLUMN;
  const y = corner.y - TEXT / 2 - 2 - Math.floor(index / layout.columns) * (ROW + 1);
  const sample = lineSpan({ x, y }, { x: x + SAMPLE, y });
  const pitch = Math.min(1.5, SAMPLE / (2 + 2 * itemAt(tickPlaces(stage.number), stage.number - 1)));
  const ticks = stageMark([sample], { stage: stage.number, pitch }).map(({ at }) =>
    lineSpan({ x: at.x, y: at.y - 1.5 }, { x: at.x, y: at.y + 1.5 }),
  );
  const level = label.figures.lengths(stage.level, { isGiven: true })[0];
  const text = `peel ${stage.number}: ${level}`;
  return {
    text: { at: { x: x + SAMPLE + 3, y: y - TEXT / 2 }, height: TEXT * 0.9, text },
    lines: [sample, ...ticks].map((span) => ({ path: { closed: false, spans: [span] }, stage })),
  };
}

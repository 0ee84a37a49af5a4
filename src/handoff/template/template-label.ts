/**
 * What a template says about itself, in the field below the part: name, plan, which of how many, the square and the way between
 * tooling holes by which its scale is checked, and each stage's colour and mark. The same lines and words for DXF and paper.
 */
import { itemAt } from '#geometry/assert.ts';
import type { Box } from '#geometry/box.ts';
import { distance } from '#geometry/point.ts';
import { lineSpan, type Path } from '#geometry/span.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { stageMark, tickPlaces } from '#plan/stage-mark.ts';
import type { InkLine, InkText } from './ink.ts';
import type { TemplateSet } from './template-set.ts';
import { rectangleOf, type ToolingHole } from './template-sheet.ts';

export interface TemplateLabel {
  readonly texts: readonly InkText[];
  readonly lines: readonly InkLine[];
  /** The scale-check square. */
  readonly square: Path;
}

/** mm on the part: long enough to find a tenth of a per cent with a rule, short enough for any sheet. */
const SQUARE = 50;
const INSET = 7;
const ROW = 6.5;
const TEXT = 3;
const HEAD_ROWS = 5;
const LEAST_WIDTH = 200;
const MOST_WIDTH = 360;
/** Of the legend's columns, and the line in it that shows the mark. */
const COLUMN = 95;
const SAMPLE = 30;
/** From the field's left edge to its words: the square, at its largest. */
const WORDS_LEFT = SQUARE * 1.1 + 2 * INSET;

/** The field of the label below a part so wide: as wide as the part, within what the words need and can use. */
export function labelSize(
  stages: number,
  partWidth: number,
): { readonly width: number; readonly height: number } {
  const width = Math.min(MOST_WIDTH, Math.max(LEAST_WIDTH, partWidth));
  const rows = HEAD_ROWS + Math.ceil(stages / columnsIn(width - WORDS_LEFT));
  return { width, height: Math.max(SQUARE * 1.1, rows * ROW) + 2 * INSET };
}

export function templateLabel(set: TemplateSet, number: number, planHash: string): TemplateLabel {
  const { sheet, input, templates } = set;
  const { stretch } = input.choices;
  const { minX, maxX, maxY } = sheet.label;
  const [width, height] = [SQUARE * stretch.x, SQUARE * stretch.y];
  const top = maxY - INSET;
  const square = rectangleOf({
    minX: minX + INSET,
    maxX: minX + INSET + width,
    minY: top - height,
    maxY: top,
  });
  const left = minX + WORDS_LEFT;
  const row = (text: string, index: number, most = TEXT): InkText => ({
    at: { x: left, y: top - TEXT - index * ROW },
    // A letter is at most as wide as high, whatever the font.
    height: Math.min(most, (maxX - INSET - left) / text.length),
    text,
  });
  const shown = [...new Set(itemAt(templates, number - 1).map(({ stage }) => stage))];
  const legend = shown.map((stage, index) => legendRow(stage, index, { left, right: maxX, top }));
  return {
    square: { closed: true, spans: square },
    texts: [
      { at: { x: minX + INSET + 2, y: top - height + 2 }, height: TEXT, text: 'scale check' },
      row(input.name, 0, TEXT * 1.4),
      row(`Scribe template ${number} of ${templates.length}   ${stretchWords(stretch)}`, 1),
      row(`Plan ${planHash}`, 2),
      row(`Square ${width.toFixed(2)} x ${height.toFixed(2)} mm${baseline(set)}`, 3),
      row('Cut the maskant only; across bridges by hand. The process specification decides.', 4),
      ...legend.map(({ text }) => text),
      ...sheet.holes.map((hole) => nameOfHole(hole).text),
    ],
    lines: legend.flatMap(({ lines }) => lines),
  };
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

function columnsIn(width: number): number {
  return Math.max(1, Math.floor(width / COLUMN));
}

function stretchWords({ x, y }: { readonly x: number; readonly y: number }): string {
  return x === 1 && y === 1 ? 'true size' : `size to part: x ${x.toFixed(5)}, y ${y.toFixed(5)}`;
}

/** The way from the first hole to each other, to be measured. */
function baseline({ sheet }: TemplateSet): string {
  const [first, ...others] = sheet.holes;
  if (first === undefined || others.length === 0) return '';
  const ways = others
    .slice(0, 3)
    .map(({ name, center }) => `${first.name}-${name} ${distance(first.center, center).toFixed(2)}`);
  return `; holes ${ways.join(', ')} mm`;
}

function legendRow(
  stage: Stage,
  index: number,
  { left, right, top }: { readonly left: number; readonly right: number; readonly top: number },
): { readonly text: InkText; readonly lines: InkLine[] } {
  const columns = columnsIn(right - left);
  const x = left + (index % columns) * COLUMN;
  const y = top - TEXT / 2 - (HEAD_ROWS + Math.floor(index / columns)) * ROW;
  const sample = lineSpan({ x, y }, { x: x + SAMPLE, y });
  const pitch = Math.min(1.5, SAMPLE / (2 + 2 * itemAt(tickPlaces(stage.number), stage.number - 1)));
  const ticks = stageMark([sample], { stage: stage.number, pitch }).map(({ at }) =>
    lineSpan({ x: at.x, y: at.y - 1.5 }, { x: at.x, y: at.y + 1.5 }),
  );
  const text = `stage ${stage.number}, to ${stage.level.toFixed(3)} mm`;
  return {
    text: { at: { x: x + SAMPLE + 3, y: y - TEXT / 2 }, height: 2.5, text },
    lines: [sample, ...ticks].map((span) => ({ path: { closed: false, spans: [span] }, stage })),
  };
}

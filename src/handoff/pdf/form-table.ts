/**
 * Tables and rows of boxes to fill in. Cells hold marked-up sentences (`flow-text.ts`) or draw themselves; a table's head stands
 * again where it goes on to a page.
 */
import { itemAt } from '#geometry/assert.ts';
import { asWritten, type Flow, flowText } from './flow-text.ts';
import { FRAME_INK, HEAD_FILL, RULE_INK, TYPE } from './paper-type.ts';
import type { PageBox, PageSize, Pen } from './pen.ts';
import type { Block } from './sheet-book.ts';
import { INK } from './sheet-ink.ts';
import { shortened } from './shortened.ts';

export interface FormColumn {
  /** Of the table's width, with those of the others. */
  readonly share: number;
  readonly head?: string;
  readonly align?: 'left' | 'middle' | 'right';
  readonly isBold?: boolean;
}

export interface DrawnCell {
  readonly draw: (pen: Pen, box: PageBox) => void;
}

/** Columns that a cell takes, itself among them. */
export interface WideCell {
  readonly text: string;
  readonly spans: number;
}

export type FormCell = string | DrawnCell | WideCell;

export interface FormTable {
  readonly columns: readonly FormColumn[];
  readonly rows: readonly (readonly FormCell[])[];
  /** mm */
  readonly width: number;
  /** mm that a row is high at least. */
  readonly row: number;
  /** Of the letters in the rows; the usual where it is left out. */
  readonly size?: number;
}

const RULE = { width: RULE_INK, color: INK };
const PAD = 1.2;
const HEAD_ROW = 4.2;
/** Of a box, what its label takes. */
const LABEL_ROW = 0.8 + TYPE.label;

export function formTable(pen: Pen, { columns, rows, width, row, size = TYPE.text }: FormTable): Block[] {
  const widths = widthsOf(columns, width);
  const isHeaded = columns.some(({ head }) => head !== undefined);
  const head = isHeaded ? headOf(pen, columns, widths) : undefined;
  const body = rows.map((cells) => rowBlock(pen, { cells, columns, widths, row, size }));
  // No row stands alone above or below the turn of a page.
  const kept = body.map((block, index) => {
    const next = index === 0 || index === body.length - 2 ? body[index + 1] : undefined;
    return next === undefined ? block : { ...block, keepsWith: next.height };
  });
  if (head === undefined) return kept;
  const [first, ...others] = kept.map((block) => ({ ...block, again: head }));
  if (first === undefined) return [head];
  return [
    { ...head, keepsWith: first.height + (first.keepsWith ?? 0) },
    { ...first, again: undefined },
    ...others,
  ];
}

function widthsOf(columns: readonly FormColumn[], width: number): number[] {
  const total = columns.reduce((sum, { share }) => sum + share, 0);
  return columns.map(({ share }) => (share / total) * width);
}

function headOf(pen: Pen, columns: readonly FormColumn[], widths: readonly number[]): Block {
  const flows = columns.map(({ head = '', align = 'left' }, column) =>
    flowText(pen, head, {
      width: itemAt(widths, column) - 2 * PAD,
      size: TYPE.head,
      isBold: true,
      align,
    }),
  );
  const height = Math.max(HEAD_ROW, ...flows.map((flow) => flow.height + 1.2));
  return {
    height,
    draw: (to, { left, top }) => {
      let x = left;
      const whole = widths.reduce((sum, each) => sum + each, 0);
      to.rectangle({ minX: x, maxX: x + whole, minY: top - height, maxY: top }, { fill: HEAD_FILL });
      flows.forEach((flow, column) => {
        const cell = itemAt(widths, column);
        to.rectangle({ minX: x, maxX: x + cell, minY: top - height, maxY: top }, { stroke: RULE });
        // Words stand at the foot of the head, above their columns.
        flow.draw(to, { x: x + PAD, y: top - height + flow.height + 0.6 });
        x += cell;
      });
    },
  };
}

interface Row {
  readonly cells: readonly FormCell[];
  readonly columns: readonly FormColumn[];
  readonly widths: readonly number[];
  readonly row: number;
  readonly size: number;
}

function rowBlock(pen: Pen, { cells, columns, widths, row, size }: Row): Block {
  let column = 0;
  const placed = cells.map((cell) => {
    const spans = typeof cell === 'object' && 'spans' in cell ? cell.spans : 1;
    const width = widths.slice(column, column + spans).reduce((sum, each) => sum + each, 0);
    const { align = 'left', isBold = false } = itemAt(columns, column);
    column += spans;
    if (typeof cell === 'object' && 'draw' in cell) return { width, draw: cell.draw, height: 0 };
    const text = typeof cell === 'string' ? cell : cell.text;
    const flow = flowText(pen, text, {
      width: width - 2 * PAD,
      size,
      isBold,
      align: spans > 1 ? 'left' : align,
    });
    return {
      width,
      height: text === '' ? 0 : flow.height,
      draw: (to: Pen, box: PageBox) =>
        flow.draw(to, { x: box.minX + PAD, y: (box.minY + box.maxY + flow.height) / 2 }),
    };
  });
  const height = Math.max(row, ...placed.map((cell) => (cell.height === 0 ? 0 : cell.height + 2)));
  return {
    height,
    draw: (to, { left, top }) => {
      let x = left;
      for (const { width, draw } of placed) {
        const box = { minX: x, maxX: x + width, minY: top - height, maxY: top };
        to.rectangle(box, { stroke: RULE });
        draw(to, box);
        x += width;
      }
    },
  };
}

export interface FormBox {
  readonly label: string;
  /** Filled in already; where it has no room smaller and on more lines, and shortened where that is not enough. */
  readonly value?: string | undefined;
  readonly share: number;
}

/** A row of boxes, each with its label in its upper left corner. */
export function formBoxes(
  pen: Pen,
  boxes: readonly FormBox[],
  { width, height }: { readonly width: number; readonly height: number },
): Block {
  const widths = widthsOf(boxes, width);
  const said = boxes.map(({ value = '' }, index) =>
    valueFlow(pen, value, { width: itemAt(widths, index) - 2 * PAD, height: height - LABEL_ROW }),
  );
  return {
    height,
    draw: (to, { left, top }) => {
      let x = left;
      boxes.forEach(({ label }, index) => {
        const width = itemAt(widths, index);
        to.rectangle({ minX: x, maxX: x + width, minY: top - height, maxY: top }, { stroke: RULE });
        to.text(label, { x: x + PAD, y: top - 0.8 - TYPE.label }, { size: TYPE.label });
        itemAt(said, index).draw(to, { x: x + PAD, y: top - LABEL_ROW });
        x += width;
      });
    },
  };
}

/** Longer ones are not tried on several lines: laying out letters costs. */
const MOST_LETTERS = 240;

/** The first size at which it has room. */
function valueFlow(pen: Pen, value: string, { width, height }: PageSize): Flow {
  const flowOf = (text: string, size: number) =>
    flowText(pen, asWritten(text), { width, size, isBold: true });
  if (value.length <= MOST_LETTERS) {
    for (const size of [TYPE.value, TYPE.note, TYPE.head, TYPE.label]) {
      const flow = flowOf(value, size);
      if (flow.height <= Math.max(height, TYPE.value * 1.3 + 0.01)) return flow;
    }
  }
  return flowOf(shortened(pen, value, { width, size: TYPE.value, isBold: true }), TYPE.value);
}

/** Blocks in a heavy frame, as one that stays on one page. */
export function framed(blocks: readonly Block[], width: number): Block {
  const height = blocks.reduce((sum, each) => sum + each.height, 0);
  return {
    height,
    draw: (pen, area) => {
      let { top } = area;
      for (const block of blocks) {
        block.draw(pen, { ...area, top });
        top -= block.height;
      }
      const box = { minX: area.left, maxX: area.left + width, minY: top, maxY: area.top };
      pen.rectangle(box, { stroke: { width: FRAME_INK, color: INK } });
    },
  };
}

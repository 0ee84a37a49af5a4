/** Ruled rows. Texts are broken to their cells, never cut; the head is bold and stands again where the table goes on to a page. */
import { itemAt } from '#geometry/assert.ts';
import type { Pen } from './pen.ts';
import { type Block, wrapped } from './sheet-book.ts';
import { INK } from './sheet-ink.ts';

export interface TableLook {
  /** Of the columns, in the width. */
  readonly shares: readonly number[];
  readonly width: number;
  /** mm that a row is high at least. */
  readonly row?: number;
  /** Columns in bold: those that say what stands beside them. */
  readonly labels?: readonly number[];
}

type Cells = readonly string[];

/** mm */
const SIZE = 2.9;
const STEP = SIZE * 1.3;
const RULE = { width: 0.2, color: INK };

/** Rows under a head. */
export function table(pen: Pen, rows: readonly Cells[], look: TableLook & { readonly head: Cells }): Block[] {
  const head = rowOf(pen, look.head, { ...look, labels: look.head.map((_, column) => column) });
  const [first, ...others] = rows.map((cells) => ({ ...rowOf(pen, cells, look), again: head }));
  if (first === undefined) return [head];
  return [{ ...head, keepsWith: first.height }, { ...first, again: undefined }, ...others];
}

/** Rows that need no head, for their label columns say what stands in them. */
export function fields(pen: Pen, rows: readonly Cells[], look: TableLook): Block[] {
  return rows.map((cells) => rowOf(pen, cells, look));
}

function rowOf(pen: Pen, cells: Cells, { shares, width, row = 6, labels = [] }: TableLook): Block {
  const total = shares.reduce((sum, share) => sum + share, 0);
  const widths = shares.map((share) => (share / total) * width);
  const columns = widths.map((cell, column) => {
    const isBold = labels.includes(column);
    return {
      cell,
      isBold,
      lines: wrapped(pen, cells[column] ?? '', { width: cell - 2, size: SIZE, isBold }),
    };
  });
  const height = Math.max(row, ...columns.map(({ lines }) => lines.length * STEP + 2.2));
  return {
    height,
    draw: (to, { left, top }) => {
      let x = left;
      for (const { cell, isBold, lines } of columns) {
        to.rectangle({ minX: x, minY: top - height, maxX: x + cell, maxY: top }, { stroke: RULE });
        const first = top - height / 2 + ((lines.length - 1) * STEP) / 2 - 1;
        lines.forEach((_, line) => {
          to.text(itemAt(lines, line), { x: x + 1, y: first - line * STEP }, { size: SIZE, isBold });
        });
        x += cell;
      }
    },
  };
}

/**
 * Sheets made of blocks, set one below the other and broken between blocks. Every page says what it is, which plan it belongs to
 * and which page of how many it is.
 */
import { PAPER, type Paper, type Pen } from './pen.ts';

export interface Area {
  readonly left: number;
  readonly right: number;
  /** y of its upper edge. */
  readonly top: number;
}

export interface Block {
  /** mm */
  readonly height: number;
  readonly startsPage?: boolean;
  readonly draw: (pen: Pen, area: Area) => void;
}

export interface BookHead {
  readonly title: string;
  readonly name: string;
  readonly planHash: string;
  readonly date: string | undefined;
}

export const INK = '#000000';
/** mm */
export const TEXT = 3.2;
const MARGIN = 14;
const HEAD = 12;
const FOOT = 10;

export function pageWidth(paper: Paper): number {
  return PAPER[paper].width - 2 * MARGIN;
}

export function drawBook(
  pen: Pen,
  {
    paper,
    head,
    blocks,
  }: { readonly paper: Paper; readonly head: BookHead; readonly blocks: readonly Block[] },
): void {
  const { width, height } = PAPER[paper];
  const [first, last] = [height - MARGIN - HEAD, MARGIN + FOOT];
  const pages: Block[][] = [];
  let room = 0;
  for (const block of blocks) {
    const page = pages.at(-1);
    if (page === undefined || block.startsPage === true || block.height > room) {
      pages.push([block]);
      room = first - last - block.height;
    } else {
      page.push(block);
      room -= block.height;
    }
  }
  pages.forEach((page, index) => {
    pen.page(PAPER[paper]);
    frame(pen, { width, height, head, count: `page ${index + 1} of ${pages.length}` });
    let top = first;
    for (const block of page) {
      block.draw(pen, { left: MARGIN, right: width - MARGIN, top });
      top -= block.height;
    }
  });
}

interface Frame {
  readonly width: number;
  readonly height: number;
  readonly head: BookHead;
  readonly count: string;
}

function frame(pen: Pen, { width, height, head, count }: Frame): void {
  const [left, right, top] = [MARGIN, width - MARGIN, height - MARGIN];
  const line = { width: 0.35, color: INK };
  pen.text(head.title, { x: left, y: top - 5 }, { size: 5, isBold: true });
  pen.text(head.name, { x: right, y: top - 5 }, { size: 4.2, align: 'right' });
  pen.line({ x: left, y: top - 8 }, { x: right, y: top - 8 }, line);
  pen.line({ x: left, y: MARGIN + 6 }, { x: right, y: MARGIN + 6 }, line);
  const small = { size: 2.4 };
  pen.text(`plan ${head.planHash}`, { x: left, y: MARGIN + 2 }, small);
  pen.text(
    [head.date, count].filter(Boolean).join('   '),
    { x: right, y: MARGIN + 2 },
    { ...small, align: 'right' },
  );
}

/** Text broken at spaces to a width. */
export function wrapped(pen: Pen, text: string, { width, size }: { width: number; size: number }): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && pen.textWidth(longer, { size }) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
}

/** A paragraph, with a box to tick before it where one is wanted. */
export function paragraph(
  pen: Pen,
  text: string,
  how: {
    readonly width: number;
    readonly size?: number;
    readonly isBold?: boolean;
    readonly hasBox?: boolean;
  },
): Block {
  const { width, size = TEXT, isBold = false, hasBox = false } = how;
  const inset = hasBox ? 6 : 0;
  const lines = wrapped(pen, text, { width: width - inset - 2, size: isBold ? size * 1.1 : size });
  const step = size * 1.35;
  return {
    height: lines.length * step + 1,
    draw: (to, { left, top }) => {
      if (hasBox) {
        const box = { minX: left, minY: top - step + 0.2, maxX: left + 3.4, maxY: top - step + 3.6 };
        to.rectangle(box, { stroke: { width: 0.25, color: INK } });
      }
      lines.forEach((line, index) => {
        to.text(line, { x: left + inset, y: top - step * (index + 1) + size * 0.3 }, { size, isBold });
      });
    },
  };
}

/** Ruled rows, the first one bold; columns by their shares of the width. Texts are cut to their cells. */
export function table(
  rows: readonly (readonly string[])[],
  {
    shares,
    width,
    row = 6,
  }: { readonly shares: readonly number[]; readonly width: number; readonly row?: number },
): Block[] {
  const total = shares.reduce((sum, share) => sum + share, 0);
  const rule = { width: 0.2, color: INK };
  return rows.map((cells, index) => ({
    height: row,
    draw: (pen, { left, top }) => {
      let x = left;
      shares.forEach((share, column) => {
        const cell = (share / total) * width;
        pen.rectangle({ minX: x, minY: top - row, maxX: x + cell, maxY: top }, { stroke: rule });
        const style = { size: 2.9, isBold: index === 0 };
        pen.text(fitted(pen, cells[column] ?? '', cell - 2), { x: x + 1, y: top - row / 2 - 1 }, style);
        x += cell;
      });
    },
  }));
}

function fitted(pen: Pen, text: string, width: number): string {
  if (pen.textWidth(text, { size: 2.9, isBold: true }) <= width) return text;
  let kept = text;
  while (kept.length > 1 && pen.textWidth(`${kept}…`, { size: 2.9, isBold: true }) > width)
    kept = kept.slice(0, -1);
  return `${kept}…`;
}

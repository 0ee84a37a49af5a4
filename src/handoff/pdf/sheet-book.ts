/**
 * Sheets made of blocks, set one below the other and broken between blocks. Every page states what it is, which plan it belongs to,
 * which page of how many it is, and that it is no approval.
 */
import { CAUTIONS } from '#handoff/cautions.ts';
import { brokenWord } from './broken-word.ts';
import { fitsIn, type TextRoom } from './letters-that-fit.ts';
import { PAPER, type Paper, type Pen } from './pen.ts';
import { INK } from './sheet-ink.ts';
import { shortened } from './shortened.ts';

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
  /** mm of what follows that must stand on the same page. */
  readonly keepsWith?: number;
  /** Stands above the block once more where it begins a page: the head of a table. */
  readonly again?: Block | undefined;
  readonly draw: (pen: Pen, area: Area) => void;
}

export interface BookHead {
  readonly title: string;
  readonly name: string;
  readonly planHash: string;
  readonly date: string | undefined;
  readonly issue?: string | undefined;
}

/** mm */
export const TEXT = 3.2;
const MARGIN = 14;
const HEAD = 12;
const FOOT = 13;

/** mm that the blocks of a page have. */
export function pageRoom(paper: Paper): { readonly width: number; readonly height: number } {
  const { width, height } = PAPER[paper];
  return { width: width - 2 * MARGIN, height: height - 2 * MARGIN - HEAD - FOOT };
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
  const first = height - MARGIN - HEAD;
  const pages = paged(blocks, pageRoom(paper).height);
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

/** Blocks by page. One taller than a page has a page of its own, and runs out of it: no block is made so tall. */
export function paged(blocks: readonly Block[], height: number): Block[][] {
  const pages: Block[][] = [];
  let room = 0;
  for (const block of blocks) {
    const page = pages.at(-1);
    const isFull = block.height + (block.keepsWith ?? 0) > room && block.height < height;
    if (page === undefined || block.startsPage === true || isFull) {
      const start = block.again === undefined ? [block] : [block.again, block];
      pages.push(start);
      room = start.reduce((left, each) => left - each.height, height);
    } else {
      page.push(block);
      room -= block.height;
    }
  }
  return pages;
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
  const title = { size: 5, isBold: true };
  pen.text(head.title, { x: left, y: top - 5 }, title);
  const name = { size: 4.2 };
  const room = right - left - pen.textWidth(head.title, title) - 8;
  pen.text(
    shortened(pen, head.name, { ...name, width: room }),
    { x: right, y: top - 5 },
    { ...name, align: 'right' },
  );
  pen.line({ x: left, y: top - 8 }, { x: right, y: top - 8 }, line);
  pen.line({ x: left, y: MARGIN + 9 }, { x: right, y: MARGIN + 9 }, line);
  const small = { size: 2.4 };
  pen.text(CAUTIONS[0] ?? '', { x: left, y: MARGIN + 5.6 }, small);
  pen.text(`plan ${head.planHash}`, { x: left, y: MARGIN + 2 }, small);
  const issue = head.issue === undefined ? undefined : `issue ${head.issue}`;
  pen.text(
    [issue, head.date, count].filter(Boolean).join('   '),
    { x: right, y: MARGIN + 2 },
    { ...small, align: 'right' },
  );
}

/** Text broken at spaces to a width, and inside a word only where the word alone is wider. */
export function wrapped(pen: Pen, text: string, room: TextRoom): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fitsIn(pen, longer, room)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const parts = fitsIn(pen, word, room) ? [word] : brokenWord(pen, word, room);
    lines.push(...parts.slice(0, -1));
    line = parts.at(-1) ?? '';
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
  const lines = wrapped(pen, text, { width: width - inset - 2, size, isBold });
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

/** mm */
const ABOVE_HEADING = 1.5;

/** Set off from what is above it, and never last on its page. */
export function heading(pen: Pen, text: string, width: number): Block {
  const said = paragraph(pen, text, { width, size: 4, isBold: true });
  return {
    height: said.height + ABOVE_HEADING,
    keepsWith: 18,
    draw: (to, area) => said.draw(to, { ...area, top: area.top - ABOVE_HEADING }),
  };
}

export function gap(height: number): Block {
  return { height, draw: () => undefined };
}

/** Blocks that stay on one page, as long as one holds them. */
export function together([first, ...others]: readonly Block[]): Block[] {
  if (first === undefined) return [];
  return [{ ...first, keepsWith: others.reduce((sum, { height }) => sum + height, 0) }, ...others];
}

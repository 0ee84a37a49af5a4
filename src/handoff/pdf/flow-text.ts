/**
 * Sentences of a form: words that break to a width, some in bold, with boxes and blanks to write in between them. Marked up in the
 * text itself: `**bold**`, `[12]` a box 12 mm wide, `_8_` a blank of 8 mm, and a new line for a line of its own.
 */
import type { Point } from '#geometry/point.ts';
import { brokenWord } from './broken-word.ts';
import { FRAME_INK, POINT } from './paper-type.ts';
import type { Pen } from './pen.ts';
import { INK } from './sheet-ink.ts';

export interface FlowLook {
  /** mm */
  readonly width: number;
  readonly size: number;
  readonly isBold?: boolean;
  readonly color?: string;
  readonly align?: 'left' | 'middle' | 'right';
}

export interface Flow {
  /** mm */
  readonly height: number;
  /** From the upper left corner of its room. */
  readonly draw: (pen: Pen, corner: Point) => void;
}

interface Piece {
  readonly width: number;
  readonly text: string;
  readonly isBold: boolean;
  /** A box, or a blank to write on; undefined for a word. */
  readonly toWrite?: 'box' | 'blank';
  /** Whether a gap comes before it. */
  readonly isApart: boolean;
}

interface Line {
  readonly pieces: Piece[];
  width: number;
}

/** mm that a box to write in is high, and its line. */
const BOX = 7.5;
const BOX_LINE = 9;
/** Parts what would be read as markup; never drawn. */
const PLAIN = '\u2060';
const MARKUP = /\*\*(.+?)\*\*|\[(\d+)\]|_(\d+)_/g;

/** Words that others wrote, such as a name: nothing in them is markup. */
export function asWritten(text: string): string {
  return text.replaceAll(/[*[\]_]/g, `$&${PLAIN}`);
}

export function flowText(pen: Pen, text: string, look: FlowLook): Flow {
  const gap = pen.textWidth(' ', { size: look.size });
  const lines = text.split('\n').flatMap((each) => linesOf(pen, piecesOf(pen, each, look), { ...look, gap }));
  const heights = lines.map(({ pieces }) =>
    pieces.some(({ toWrite }) => toWrite === 'box') ? BOX_LINE : look.size * 1.3,
  );
  return {
    height: heights.reduce((sum, each) => sum + each, 0),
    draw: (to, { x, y }) => {
      let top = y;
      lines.forEach((line, index) => {
        const height = heights[index] ?? 0;
        const spare = look.width - line.width;
        const left = x + { left: 0, middle: spare / 2, right: spare }[look.align ?? 'left'];
        drawLine(to, line, { left, base: top - height / 2 - look.size * 0.34, gap, look });
        top -= height;
      });
    },
  };
}

function piecesOf(pen: Pen, text: string, { size, isBold = false }: FlowLook): Piece[] {
  const pieces: Piece[] = [];
  let isApart = false;
  const words = (plain: string, bold: boolean): void => {
    if (/^\s/.test(plain)) isApart = true;
    for (const marked of plain.split(/ +/).filter((each) => each !== '')) {
      const word = marked.replaceAll(PLAIN, '');
      pieces.push({ text: word, isBold: bold, width: pen.textWidth(word, { size, isBold: bold }), isApart });
      isApart = true;
    }
    isApart = /\s$/.test(plain) || (isApart && plain === '');
  };
  let from = 0;
  for (const match of text.matchAll(MARKUP)) {
    words(text.slice(from, match.index), isBold);
    const [whole, bold, box, blank] = match;
    if (bold !== undefined) words(bold, true);
    else {
      const toWrite = box === undefined ? 'blank' : 'box';
      pieces.push({ text: '', isBold, width: Number(box ?? blank), toWrite, isApart });
      isApart = false;
    }
    from = match.index + whole.length;
  }
  words(text.slice(from), isBold);
  return pieces;
}

function linesOf(pen: Pen, pieces: readonly Piece[], look: FlowLook & { readonly gap: number }): Line[] {
  const { width, gap, size } = look;
  let line: Line = { pieces: [], width: 0 };
  const lines = [line];
  const put = (piece: Piece): void => {
    const before = line.pieces.length > 0 && piece.isApart ? gap : 0;
    if (line.pieces.length > 0 && line.width + before + piece.width > width) {
      line = { pieces: [], width: 0 };
      lines.push(line);
    }
    const isFirst = line.pieces.length === 0;
    line.pieces.push(piece);
    line.width += piece.width + (isFirst ? 0 : before);
  };
  for (const piece of pieces) {
    if (piece.width <= width || piece.toWrite !== undefined) put(piece);
    else {
      for (const text of brokenWord(pen, piece.text, { width, size, isBold: piece.isBold })) {
        put({ ...piece, text, width: pen.textWidth(text, { size, isBold: piece.isBold }) });
      }
    }
  }
  return lines;
}

interface At {
  readonly left: number;
  readonly base: number;
  readonly gap: number;
  readonly look: FlowLook;
}

function drawLine(pen: Pen, { pieces }: Line, { left, base, gap, look }: At): void {
  let x = left;
  const color = look.color ?? INK;
  pieces.forEach(({ text, isBold, width, toWrite, isApart }, index) => {
    if (index > 0 && isApart) x += gap;
    const middle = base + look.size * 0.34;
    if (toWrite === 'box') {
      const box = { minX: x, maxX: x + width, minY: middle - BOX / 2, maxY: middle + BOX / 2 };
      pen.rectangle(box, { stroke: { width: FRAME_INK / 2, color } });
    } else if (toWrite === 'blank') {
      pen.line({ x, y: base - 0.4 }, { x: x + width, y: base - 0.4 }, { width: POINT / 2, color });
    } else pen.text(text, { x, y: base }, { size: look.size, isBold, color });
    x += width;
  });
}

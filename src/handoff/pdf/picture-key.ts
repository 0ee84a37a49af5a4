/** The key below a picture: samples of its hatches and lines, each with what it means, in rows as wide as the picture. */
import { type Loop, lineSpan } from '#geometry/span.ts';
import { drawMarks } from './part-marks.ts';
import type { PageBox, Pen, Stroke } from './pen.ts';
import type { Block } from './sheet-book.ts';
import { hatch, INK } from './sheet-ink.ts';

export interface KeyEntry {
  readonly text: string;
  readonly draw: (pen: Pen, box: PageBox) => void;
}

/** mm */
const SAMPLE = { width: 12, height: 4 };
const ROW = 6;
const TEXT = 2.8;
const GAP = 4;
/** Of a letter, about: rows are counted before there is a pen. */
const LETTER = TEXT * 0.52;

export function pictureKey(entries: readonly KeyEntry[], width: number): Block {
  const rows: KeyEntry[][] = [];
  let room = 0;
  for (const entry of entries) {
    const needed = widthOf(entry);
    if (needed > room) {
      rows.push([]);
      room = width;
    }
    rows.at(-1)?.push(entry);
    room -= needed;
  }
  return {
    height: rows.length * ROW + 1,
    draw: (pen, { left, top }) => {
      rows.forEach((row, index) => {
        let x = left;
        const maxY = top - 0.5 - index * ROW;
        for (const entry of row) {
          entry.draw(pen, { minX: x, minY: maxY - SAMPLE.height, maxX: x + SAMPLE.width, maxY });
          const at = { x: x + SAMPLE.width + 1.5, y: maxY - SAMPLE.height / 2 - 1 };
          pen.text(entry.text, at, { size: TEXT });
          x += widthOf(entry);
        }
      });
    },
  };
}

function widthOf({ text }: KeyEntry): number {
  return SAMPLE.width + 1.5 + text.length * LETTER + GAP;
}

/** A line through the middle of its sample, with a stage's mark where a stage is given. */
export function lineEntry(text: string, stage: number | undefined, stroke: Stroke): KeyEntry {
  return {
    text,
    draw: (pen, { minX, maxX, minY, maxY }) => {
      const y = (minY + maxY) / 2;
      const line = lineSpan({ x: minX, y }, { x: maxX, y });
      pen.line(line.start, line.end, stroke);
      if (stage !== undefined) drawMarks(pen, [{ closed: false, spans: [line] }], stage, 1);
    },
  };
}

/** An area filled and hatched, as on the picture. */
export function areaEntry(
  text: string,
  how: { readonly fill?: string; readonly style?: Parameters<typeof hatch>[2]; readonly border?: Stroke },
): KeyEntry {
  const { fill, style, border } = how;
  return {
    text,
    draw: (pen, box) => {
      if (fill !== undefined) pen.rectangle(box, { fill });
      if (style !== undefined) hatch(pen, [boxLoop(box)], style);
      pen.rectangle(box, { stroke: border ?? { width: 0.12, color: INK } });
    },
  };
}

function boxLoop({ minX, minY, maxX, maxY }: PageBox): Loop {
  const [a, b, c, d] = [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ] as const;
  return [lineSpan(a, b), lineSpan(b, c), lineSpan(c, d), lineSpan(d, a)];
}

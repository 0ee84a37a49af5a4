/**
 * Room for text. However long the text is, only as many letters are measured as could find room at all, and a few times that:
 * laying out letters is what a sheet spends its time on.
 */
import type { Pen } from './pen.ts';

/** No letter that is read is narrower than this share of its size. Lines of nothing but narrower ones break early. */
const NARROWEST_LETTER = 0.1;

export interface TextRoom {
  /** mm */
  readonly width: number;
  readonly size: number;
  readonly isBold?: boolean;
}

/** Whether the whole text has room. */
export function fitsIn(pen: Pen, text: string, { width, ...style }: TextRoom): boolean {
  // A letter takes two units of text at most.
  return text.length <= 2 * mostLetters({ width, ...style }) && pen.textWidth(text, style) <= width;
}

/** How many of the letters from the first on have room with `end` after them: one at least. */
export function lettersThatFit(
  pen: Pen,
  letters: readonly string[],
  { end = '', width, ...style }: TextRoom & { readonly end?: string },
): number {
  let fits = 1;
  let tooMany = Math.min(letters.length, mostLetters({ width, ...style })) + 1;
  while (tooMany - fits > 1) {
    const middle = (fits + tooMany) >> 1;
    if (pen.textWidth(`${letters.slice(0, middle).join('')}${end}`, style) > width) tooMany = middle;
    else fits = middle;
  }
  return fits;
}

function mostLetters({ width, size }: TextRoom): number {
  return Math.max(1, Math.ceil(width / (size * NARROWEST_LETTER)));
}

/** A word that is wider than its room, in as many lines as it takes. */
import { lettersThatFit, type TextRoom } from './letters-that-fit.ts';
import type { Pen } from './pen.ts';

/** Letters; no sheet of paper has longer lines. */
const MOST_LINE = 4000;

export function brokenWord(pen: Pen, word: string, room: TextRoom): string[] {
  const letters = Array.from(word);
  const lines: string[] = [];
  let from = 0;
  while (from < letters.length) {
    const fits = lettersThatFit(pen, letters.slice(from, from + MOST_LINE), room);
    lines.push(letters.slice(from, from + fits).join(''));
    from += fits;
  }
  return lines;
}

/** A heading cut to the room that it has, with dots for the rest: for names that stand in full elsewhere. */
import { fitsIn, lettersThatFit, type TextRoom } from './letters-that-fit.ts';
import type { Pen } from './pen.ts';

export function shortened(pen: Pen, text: string, room: TextRoom): string {
  if (fitsIn(pen, text, room)) return text;
  const letters = Array.from(text);
  return `${letters.slice(0, lettersThatFit(pen, letters, { ...room, end: '…' })).join('')}…`;
}

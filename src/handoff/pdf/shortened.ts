/** A heading cut to the room that it has, with dots for the rest: for names that stand in full elsewhere. */
import type { Pen } from './pen.ts';

export function shortened(
  pen: Pen,
  text: string,
  { width, ...style }: { readonly width: number; readonly size: number; readonly isBold?: boolean },
): string {
  if (pen.textWidth(text, style) <= width) return text;
  let kept = Array.from(text);
  while (kept.length > 1 && pen.textWidth(`${kept.join('')}…`, style) > width) kept = kept.slice(0, -1);
  return `${kept.join('')}…`;
}

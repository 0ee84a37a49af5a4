/** Colours on a terminal: the standard SGR sequences of ECMA-48, or nothing. */

export type Paint = 'bold' | 'red' | 'yellow' | 'cyan';

const CODES: Record<Paint, readonly [on: number, off: number]> = {
  bold: [1, 22],
  red: [31, 39],
  yellow: [33, 39],
  cyan: [36, 39],
};

const ESCAPE = '\u001b[';

export function paint(text: string, how: Paint, color: boolean): string {
  if (!color) return text;
  const [on, off] = CODES[how];
  return `${ESCAPE}${on}m${text}${ESCAPE}${off}m`;
}

/** Two blocks in the colour of a stage, for its key; nothing without colour. */
export function swatch(color: string, shown: boolean): string {
  if (!shown) return '';
  const value = Number.parseInt(color.slice(1), 16);
  return `${ESCAPE}48;2;${value >> 16};${(value >> 8) & 255};${value & 255}m  ${ESCAPE}49m `;
}

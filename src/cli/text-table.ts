/** Tables for the terminal: columns as wide as their widest cell. */
import { paint } from './paint.ts';

export type Alignment = 'left' | 'right';

/** Under a bold head, figures to the right. */
export function textTable(
  heads: readonly string[],
  rows: readonly (readonly string[])[],
  color: boolean,
): string {
  const [head = '', ...lines] = alignedLines([heads, ...rows], ['right']);
  return [paint(head, 'bold', color), ...lines, ''].join('\n');
}

/** A line for each row, without spaces at its end. Columns past the last alignment given have that one. */
export function alignedLines(
  rows: readonly (readonly string[])[],
  alignments: readonly Alignment[],
): string[] {
  const widths = (rows[0] ?? []).map((_, column) =>
    rows.reduce((widest, row) => Math.max(widest, (row[column] ?? '').length), 0),
  );
  const pad = (cell: string, column: number) => {
    const width = widths[column] ?? 0;
    const alignment = alignments[Math.min(column, alignments.length - 1)];
    return alignment === 'left' ? cell.padEnd(width) : cell.padStart(width);
  };
  return rows.map((row) => row.map(pad).join('  ').trimEnd());
}

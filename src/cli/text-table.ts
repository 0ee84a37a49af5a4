/** A table for the terminal: columns as wide as their widest cell, figures to the right. */
import { paint } from './paint.ts';

export function textTable(
  heads: readonly string[],
  rows: readonly (readonly string[])[],
  color: boolean,
): string {
  const widths = heads.map((head, index) =>
    Math.max(head.length, ...rows.map((cells) => (cells[index] ?? '').length)),
  );
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, index) => cell.padStart(widths[index] ?? 0))
      .join('  ')
      .trimEnd();
  return [paint(line(heads), 'bold', color), ...rows.map(line), ''].join('\n');
}

/** Points from a CSV file: a first line that names the columns `x` and `y`, then a point a line (RFC 4180, and its cousins with semicolons or tabs). */
import { type Finding, finding } from '#findings/finding.ts';
import { readNumber } from './read-number.ts';

/** x, y, x, y, … as the file gives them. */
export type PointsRead =
  | { readonly points: Float64Array }
  | { readonly refused: readonly [Finding, ...Finding[]] };

export function readPoints(file: string, text: string): PointsRead {
  const [head = '', ...lines] = text.split(/\r\n|\n|\r/);
  const separator = [';', '\t'].find((each) => head.includes(each)) ?? ',';
  const cellsOf = (line: string) => line.split(separator).map(unquoted);
  const names = cellsOf(head);
  const columns = (['x', 'y'] as const).map((column) => ({
    column,
    at: names.findIndex((name) => name.toLowerCase() === column),
  }));
  const [missing, ...more] = columns
    .filter(({ at }) => at < 0)
    .map(({ column }) =>
      finding('points-column-missing', { file, column, found: names.filter(Boolean) }, { line: 1 }),
    );
  if (missing !== undefined) return { refused: [missing, ...more] };

  const figures: number[] = [];
  const wrong: { readonly line: number; readonly column: string; readonly found: string }[] = [];
  lines.forEach((line, index) => {
    if (line.trim() === '') return;
    const cells = cellsOf(line);
    for (const { column, at } of columns) {
      const found = cells[at] ?? '';
      const value = readNumber(separator === ',' ? found : found.replace(',', '.'));
      figures.push(value ?? 0);
      if (value === undefined) wrong.push({ line: index + 2, column, found });
    }
  });
  const [first] = wrong;
  if (first !== undefined) {
    const { line, column, found } = first;
    return { refused: [finding('points-value-wrong', { file, column, found, bad: wrong.length }, { line })] };
  }
  if (figures.length === 0) return { refused: [finding('points-missing', { file })] };
  return { points: Float64Array.from(figures) };
}

function unquoted(cell: string): string {
  const text = cell.trim();
  return text.length >= 2 && text.startsWith('"') && text.endsWith('"') ? text.slice(1, -1).trim() : text;
}

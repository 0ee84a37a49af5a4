/** Rows as CSV (RFC 4180, with line feeds): lengths to a millionth of a millimetre, empty where there is no figure. */
import { toMillionth } from '#units/round-figures.ts';

export type CsvRow = Readonly<Record<string, number | undefined>>;

export function csvText(columns: readonly string[], rows: readonly CsvRow[]): string {
  const lines = rows.map((row) => columns.map((column) => figure(row[column])).join(','));
  return `${[columns.join(','), ...lines].join('\n')}\n`;
}

function figure(value: number | undefined): string {
  return value === undefined ? '' : String(toMillionth(value));
}

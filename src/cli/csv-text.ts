/** Rows as CSV (RFC 4180, with line feeds): lengths to a millionth of a millimetre, empty where there is no figure. */

export type CsvRow = Readonly<Record<string, number | undefined>>;

export function csvText(columns: readonly string[], rows: readonly CsvRow[]): string {
  const lines = rows.map((row) => columns.map((column) => figure(row[column])).join(','));
  return `${[columns.join(','), ...lines].join('\n')}\n`;
}

function figure(value: number | undefined): string {
  return value === undefined ? '' : String(roundFigure(value));
}

/** Adding 0 turns −0 into 0. */
export function roundFigure(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}

/** Gives the rows that a command found: to a file, else as CSV on the output, or among what `--json` prints. */
import { resolve } from 'node:path';
import { type Finding, hasStop } from '#findings/finding.ts';
import { toMillionth } from '#units/round-figures.ts';
import { type CommandEnd, refused } from './command-end.ts';
import { type CsvRow, csvText } from './csv-text.ts';
import type { Terminal } from './terminal.ts';
import { writeText } from './write-files.ts';

export interface RowsFound {
  readonly columns: readonly string[];
  readonly rows: readonly CsvRow[];
  readonly findings: readonly Finding[];
  /** Paths that were read: never written over. */
  readonly inputs: readonly string[];
  readonly out: string | undefined;
  readonly json: boolean;
}

export function giveRows(
  { columns, rows, findings, inputs, out, json }: RowsFound,
  terminal: Terminal,
): CommandEnd {
  const exitCode = hasStop(findings) ? 1 : 0;
  if (out !== undefined) {
    const outcome = writeText(resolve(out), csvText(columns, rows), inputs);
    if ('refused' in outcome) return refused(outcome.refused);
    return {
      exitCode,
      findings: [...findings, ...outcome.findings],
      record: { file: out, rows: rows.length },
    };
  }
  if (!json) {
    terminal.out(csvText(columns, rows));
    return { exitCode, findings };
  }
  return { exitCode, findings, record: { rows: rows.map((row) => recordOf(columns, row)) } };
}

function recordOf(columns: readonly string[], row: CsvRow): Record<string, number | null> {
  return Object.fromEntries(
    columns.map((column) => {
      const value = row[column];
      return [column, value === undefined ? null : toMillionth(value)];
    }),
  );
}

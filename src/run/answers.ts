/** What rows of a run say of earlier rows: which readings are struck out, which are confirmed. */
import { type Finding, finding } from '#findings/finding.ts';
import type { ReadingRow } from './correct-readings.ts';

/** By the number of the reading, from 1: the row that answers it; the last of several counts. */
export interface Answers {
  readonly struck: ReadonlyMap<number, ReadingRow>;
  readonly confirmed: ReadonlyMap<number, ReadingRow>;
}

/** Findings: `reading-unclear`, where no reading above has that number. */
export function answersIn(rows: readonly ReadingRow[]): Answers & { readonly findings: readonly Finding[] } {
  const struck = new Map<number, ReadingRow>();
  const confirmed = new Map<number, ReadingRow>();
  const findings: Finding[] = [];
  for (const [index, row] of rows.entries()) {
    const number = row.strike ?? row.confirm;
    if (number === undefined) continue;
    const meant = number <= index ? rows[number - 1] : undefined;
    const column = row.strike === undefined ? 'confirm' : 'strike';
    if (meant === undefined || !isReading(meant)) {
      const facts = { column, found: String(number), expected: 'the number of a reading above it' };
      findings.push(finding('reading-unclear', facts, { line: row.line }));
    } else if (column === 'strike') {
      struck.set(number, row);
    } else {
      confirmed.set(number, row);
    }
  }
  return { struck, confirmed, findings };
}

export function isReading({ depth, thickness }: ReadingRow): boolean {
  return depth !== undefined || thickness !== undefined;
}

/** The readings of a record as the file that they came from: so that a run is gone on with wherever its record is. */
import { readRunFile } from '#job/formats/run-file.ts';

/** In the order of docs/run.md; the note last, for it may hold commas. */
export const READING_COLUMNS = [
  'stage',
  'minutes',
  'region',
  'x',
  'y',
  'depth',
  'thickness',
  'unit',
  'who',
  'when',
  'gauge',
  'strike',
  'confirm',
  'note',
] as const;

/** CSV that `correctRun` reads; undefined where the text is no record of a run. Whether its seals hold is for `correctRun` to say. */
export function readingsOfRecord(recordText: string): string | undefined {
  const record = readRunFile(recordText);
  if (record === undefined) return undefined;
  const rows = record.entries.flatMap((entry) => entry.rows);
  const lines = rows.map((row) => READING_COLUMNS.map((column) => row[column] ?? '').join(','));
  return [READING_COLUMNS.join(','), ...lines, ''].join('\n');
}

/**
 * The record of a run: every row of readings once, in the order they came, each entry sealed with the hash of what stands
 * before it. It only grows. Readings come as a file that grows as well, at its end or in lines that were blank: what is recorded must
 * stand in it, unchanged.
 */
import { type Finding, finding } from '#findings/finding.ts';
import { jsonText } from '#handoff/json-text.ts';
import { type ReadingGiven, type RunFile, readRunFile } from '#job/formats/run-file.ts';
import { toMillionth } from '#units/round-figures.ts';
import type { ReadingRow } from './correct-readings.ts';
import { READING_COLUMNS } from './readings-of-record.ts';
import { sha256Of } from './sha256-of.ts';

/** Findings: `run-record-unusable`. */
export function readRecord(
  planText: string,
  recordText: string | undefined,
): { readonly record: RunFile } | { readonly refused: Finding } {
  const plan = sha256Of(planText);
  if (recordText === undefined) return { record: { format: 'isobath-run', version: 1, plan, entries: [] } };
  const record = readRunFile(recordText);
  if (record === undefined) return { refused: finding('run-record-unusable', { why: 'damaged' }) };
  if (record.plan !== plan) return { refused: finding('run-record-unusable', { why: 'other-plan' }) };
  let before = plan;
  for (const entry of record.entries) {
    if (entry.seal !== sealOf(before, entry)) {
      return { refused: finding('run-record-unusable', { why: 'damaged' }) };
    }
    before = entry.seal;
  }
  return { record };
}

export interface Grown {
  /** What is recorded, then what is new: a row's place here, from 1, is its number. */
  readonly rows: readonly ReadingRow[];
  /** How many of them are recorded already. */
  readonly known: number;
}

/** Findings: `readings-rewritten`, where a recorded row stands in the file no more. */
export function rowsOfRun(
  record: RunFile,
  rows: readonly ReadingRow[],
): Grown | { readonly refused: Finding } {
  const byText = new Map<string, ReadingRow[]>();
  for (const row of rows) byText.set(spell(row), [...(byText.get(spell(row)) ?? []), row]);
  const recorded: ReadingRow[] = [];
  const entries = record.entries.flatMap((entry) => entry.rows);
  for (const [place, row] of entries.entries()) {
    const found = byText.get(spell(row))?.shift();
    if (found === undefined) {
      const line = rows[place]?.line;
      const facts = { recorded: entries.length, row: place + 1 };
      return { refused: finding('readings-rewritten', facts, line === undefined ? {} : { line }) };
    }
    recorded.push(found);
  }
  const fresh = new Set([...byText.values()].flat());
  return { rows: [...recorded, ...rows.filter((row) => fresh.has(row))], known: recorded.length };
}

/** The record with the rows that are new; the same record where there are none. */
export function growRecord(record: RunFile, { rows, known }: Grown, minutesLeft: readonly number[]): RunFile {
  const fresh = rows.slice(known).map(inOrder);
  if (fresh.length === 0) return record;
  const entry = { rows: fresh, minutesLeft: minutesLeft.map(toMillionth) };
  const seal = sealOf(record.entries.at(-1)?.seal ?? record.plan, entry);
  return { ...record, entries: [...record.entries, { ...entry, seal }] };
}

/** Keys in the order of the schema, however the file's columns stand: the same bytes whoever writes the record again. */
function inOrder(row: ReadingRow): ReadingGiven {
  const given = READING_COLUMNS.filter((column) => row[column] !== undefined);
  return Object.fromEntries(given.map((column) => [column, row[column]])) as unknown as ReadingGiven;
}

export function recordText(record: RunFile): string {
  return jsonText(record);
}

function sealOf(before: string, { rows, minutesLeft }: Omit<RunFile['entries'][number], 'seal'>): string {
  return sha256Of(JSON.stringify([before, rows.map(spell), minutesLeft]));
}

/** One text for one row, in whatever order its columns came. */
function spell(row: ReadingGiven): string {
  const { stage, minutes, region, x, y, depth, thickness, note } = row;
  const { unit, who, when, gauge, strike, confirm } = row;
  const first = [stage, minutes, region, x, y, depth, thickness, note];
  // Only where a row says any of these: seals of records from before there were such columns hold.
  const later = [unit, who, when, gauge, strike, confirm];
  return JSON.stringify(later.every((each) => each === undefined) ? first : [...first, ...later]);
}

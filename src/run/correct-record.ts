/**
 * The record of a run: every row of readings once, in the order they came, each entry sealed with the hash of what stands
 * before it. It only grows. Readings come as a file that grows as well: what is recorded must stand at its start, unchanged.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { type Finding, finding } from '#findings/finding.ts';
import { jsonText } from '#handoff/json-text.ts';
import { type ReadingGiven, type RunFile, runFileSchema } from '#job/files/run-file.ts';
import type { ReadingRow } from './correct-readings.ts';

/** Findings: `run-record-unusable`. */
export function readRecord(
  planText: string,
  recordText: string | undefined,
): { readonly record: RunFile } | { readonly refused: Finding } {
  const plan = hashOf(planText);
  if (recordText === undefined) return { record: { format: 'isobath-run', version: 1, plan, entries: [] } };
  const record = parsed(recordText);
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

function parsed(text: string): RunFile | undefined {
  try {
    return runFileSchema.safeParse(JSON.parse(text)).data;
  } catch {
    return undefined;
  }
}

/** Findings: `readings-rewritten`. */
export function findRewritten(record: RunFile, rows: readonly ReadingRow[]): Finding | undefined {
  const recorded = record.entries.flatMap((entry) => entry.rows);
  const index = recorded.findIndex((row, place) => spell(rows[place]) !== spell(row));
  if (index < 0) return undefined;
  const line = rows[index]?.line;
  const facts = { recorded: recorded.length, row: index + 1 };
  return finding('readings-rewritten', facts, line === undefined ? {} : { line });
}

/** The record with the rows that are new; the same record where there are none. */
export function growRecord(
  record: RunFile,
  rows: readonly ReadingRow[],
  minutesLeft: readonly number[],
): RunFile {
  const known = record.entries.reduce((sum, entry) => sum + entry.rows.length, 0);
  const fresh = rows.slice(known).map(({ line: _, ...row }) => row);
  if (fresh.length === 0) return record;
  const entry = { rows: fresh, minutesLeft: minutesLeft.map((each) => Math.round(each * 1e6) / 1e6) };
  const seal = sealOf(record.entries.at(-1)?.seal ?? record.plan, entry);
  return { ...record, entries: [...record.entries, { ...entry, seal }] };
}

export function recordText(record: RunFile): string {
  return jsonText(record);
}

function sealOf(before: string, { rows, minutesLeft }: Omit<RunFile['entries'][number], 'seal'>): string {
  return hashOf(JSON.stringify([before, rows.map(spell), minutesLeft]));
}

/** One text for one row, in whatever order its columns came. */
function spell(row: ReadingGiven | undefined): string {
  if (row === undefined) return '';
  const { stage, minutes, region, x, y, depth, thickness, note } = row;
  return JSON.stringify([stage, minutes, region, x, y, depth, thickness, note]);
}

function hashOf(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}

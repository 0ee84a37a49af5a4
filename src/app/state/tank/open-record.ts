/** An earlier record of a run: whether it is one of this plan, and how it goes with the one that is kept here. */
import type { Finding } from '#findings/finding.ts';
import { readRunFile } from '#job/formats/run-file.ts';
import { correctRun } from '#run/correct-run.ts';
import { readingsOfRecord } from '#run/readings-of-record.ts';
import type { RunReadings } from './run-readings.ts';

/**
 * `further`: it goes on from what is here, or nothing is here. `behind`: what is here goes on from it. `apart`: each has rows that the
 * other has not, so that one of them must be chosen.
 */
export type RecordOpened =
  | { readonly refused: readonly Finding[] }
  | { readonly run: RunReadings; readonly stands: 'further' | 'behind' | 'apart' };

export function openRecord(text: string, here: RunReadings, planText: string): RecordOpened {
  const readings = readingsOfRecord(text) ?? '';
  const { findings, recordText } = correctRun({ planText, readingsText: readings, recordText: text });
  if (recordText === undefined) return { refused: findings.filter(({ severity }) => severity === 'stop') };
  const run = { recordText };
  const [theirs, ours] = [sealsOf(run), sealsOf(here)];
  const isPrefix = (short: readonly string[], long: readonly string[]) =>
    short.every((seal, index) => long[index] === seal);
  if (isPrefix(ours, theirs)) return { run, stands: 'further' };
  return { run, stands: isPrefix(theirs, ours) ? 'behind' : 'apart' };
}

/** Each entry is sealed with all before it, so that seals show whether one record goes on from another. */
function sealsOf({ recordText }: RunReadings): readonly string[] {
  if (recordText === undefined) return [];
  return readRunFile(recordText)?.entries.map(({ seal }) => seal) ?? [];
}

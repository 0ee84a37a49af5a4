/**
 * Readings of a run as they are put in at the tank: a text in the form of `isobath correct`, and the record that it has grown.
 * A reading that the core refuses is not taken; one that is recorded stays.
 */
import type { Finding } from '#findings/finding.ts';
import { type CorrectResult, correctRun } from '#run/correct-run.ts';

export interface RunReadings {
  readonly readingsText: string;
  /** Undefined before the first reading. */
  readonly recordText: string | undefined;
}

export interface ReadingPut {
  /** 0 before the first dip. */
  readonly stage: number;
  /** Minutes that the stage had so far; undefined before the first dip. */
  readonly minutes: number | undefined;
  readonly region: string;
  readonly kind: 'depth' | 'thickness';
  /** In the job's unit. */
  readonly value: number;
  readonly note: string;
}

export const NO_READINGS: RunReadings = {
  readingsText: 'stage,minutes,region,depth,thickness,note\n',
  recordText: undefined,
};

export interface Taken {
  readonly run: RunReadings;
  readonly corrected: CorrectResult['corrected'];
  readonly findings: readonly Finding[];
  readonly isTaken: boolean;
}

export function takeReading(run: RunReadings, reading: ReadingPut, planText: string): Taken {
  const readingsText = `${run.readingsText}${rowOf(reading)}\n`;
  const { findings, corrected, recordText } = correctRun({
    planText,
    readingsText,
    recordText: run.recordText,
  });
  if (corrected === undefined || recordText === undefined) {
    return { run, corrected: correctedBy(run, planText), findings, isTaken: false };
  }
  return { run: { readingsText, recordText }, corrected, findings, isTaken: true };
}

/** What the readings so far come to; undefined before the first one. */
export function correctedBy(run: RunReadings, planText: string): CorrectResult['corrected'] {
  if (run.recordText === undefined) return undefined;
  return correctRun({ planText, ...run }).corrected;
}

function rowOf({ stage, minutes, region, kind, value, note }: ReadingPut): string {
  const [depth, thickness] = kind === 'depth' ? [value, ''] : ['', value];
  // The last column, and one line: what would end a cell or a row is put otherwise.
  const spoken = note.replaceAll(/[,\s]+/g, (gap) => (gap.includes(',') ? '; ' : ' ')).trim();
  return [stage, minutes ?? '', region, depth, thickness, spoken].join(',');
}

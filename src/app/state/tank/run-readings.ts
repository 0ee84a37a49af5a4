/**
 * The run at the tank as its record has it: rows go in as the columns of `isobath correct`, what comes of all of them comes out. The
 * record is all that is kept, for it gives its rows back; it only grows. A reading that the core asks about or refuses is not
 * taken until whoever gauges has answered.
 */
import type { Finding } from '#findings/finding.ts';
import { readRunFile } from '#job/formats/run-file.ts';
import { type CorrectResult, correctRun } from '#run/correct-run.ts';
import type { Question } from '#run/question-readings.ts';
import { READING_COLUMNS, readingsOfRecord } from '#run/readings-of-record.ts';
import { SAME_MINUTE } from '#units/depth-tolerances.ts';
import type { ShownUnit } from '#units/show-length.ts';

export interface RunReadings {
  /** Undefined before the first row. */
  readonly recordText: string | undefined;
}

export const NO_READINGS: RunReadings = { recordText: undefined };

/** Who writes a row, and at what time by the clock on the wall. */
export interface Signed {
  readonly who: string;
  readonly when: string;
}

export interface ReadingPut extends Signed {
  /** 0 before the first dip. */
  readonly stage: number;
  /** Minutes that the stage had so far; undefined before the first dip. */
  readonly minutes: number | undefined;
  readonly region: string;
  readonly kind: 'depth' | 'thickness';
  readonly value: number;
  /** Of the value. */
  readonly unit: ShownUnit;
  readonly gauge: string;
}

type Row = Readonly<Partial<Record<(typeof READING_COLUMNS)[number], string | number | undefined>>>;

export interface Taken {
  readonly run: RunReadings;
  readonly result: CorrectResult;
}

/** `refused`: it cannot be used, and why. `asked`: it is recorded once it is confirmed or given its unit. */
export type Tried =
  | { readonly taken: Taken }
  | { readonly question: Question }
  | { readonly refused: readonly Finding[] };

/** Undefined before the first row. */
export function resultOf(run: RunReadings, planText: string): CorrectResult | undefined {
  if (run.recordText === undefined) return undefined;
  return correctRun({ planText, readingsText: readingsText(run), recordText: run.recordText });
}

/** The rows of the record, as `isobath correct --readings` takes them. */
export function readingsText({ recordText }: RunReadings): string {
  const header = `${READING_COLUMNS.join(',')}\n`;
  return recordText === undefined ? header : (readingsOfRecord(recordText) ?? header);
}

export function tryReading(run: RunReadings, put: ReadingPut, planText: string): Tried {
  const row = rowOfReading(put);
  const result = resultWith(run, [row], planText);
  if (result.corrected === undefined) return { refused: result.findings };
  const own = result.readings?.find(({ number }) => number === rowCount(run) + 1);
  if (own?.state === 'asked' && own.question !== undefined) return { question: own.question };
  if (own?.state !== 'counts') {
    return { refused: result.findings.filter(({ code }) => code === 'reading-off-floor') };
  }
  return { taken: taken(run, result) };
}

/** A reading that was asked about, with the reason for which it counts all the same. */
export function confirmNew(run: RunReadings, put: ReadingPut, reason: string, planText: string): Taken {
  const { who, when } = put;
  const answer = { stage: 0, who, when, confirm: rowCount(run) + 1, note: reason };
  return taken(run, resultWith(run, [rowOfReading(put), answer], planText));
}

/** Strikes out a reading of the record, or confirms one. */
export function answerReading(
  run: RunReadings,
  answer: Signed & {
    readonly number: number;
    readonly kind: 'strike' | 'confirm';
    readonly reason: string;
  },
  planText: string,
): Taken {
  const { who, when, number, kind, reason } = answer;
  return taken(run, resultWith(run, [{ stage: 0, who, when, [kind]: number, note: reason }], planText));
}

/**
 * States how long a stage really was, where the record has less, and that the next one is begun: the first has no minutes left then,
 * and what is expected of its floors is without them.
 */
export function endStage(
  run: RunReadings,
  {
    next,
    ...stated
  }: Signed & {
    readonly stage: number;
    readonly minutes: number;
    readonly next: number | undefined;
  },
  { recorded, planText }: { readonly recorded: number; readonly planText: string },
): Taken {
  const own = stated.minutes > recorded + SAME_MINUTE ? [stated] : [];
  const begun =
    next === undefined || lastRecorded(run) >= next ? [] : [{ ...stated, stage: next, minutes: 0 }];
  return taken(run, resultWith(run, [...own, ...begun], planText));
}

/** mm that a reading should say by the plan and the readings so far; undefined where nothing says it. */
export function expectedOf(
  run: RunReadings,
  at: Pick<ReadingPut, 'stage' | 'minutes' | 'region' | 'kind'>,
  planText: string,
): number | undefined {
  // The core says what it expected of any reading, whatever that says.
  const put: ReadingPut = { ...at, value: 1, unit: 'mm', who: '', when: '', gauge: '' };
  const { readings } = resultWith(run, [rowOfReading(put)], planText);
  return readings?.find(({ number }) => number === rowCount(run) + 1)?.expected;
}

/** The last stage that a row names; 0 before the first. */
export function lastRecorded({ recordText }: RunReadings): number {
  const entries = recordText === undefined ? [] : (readRunFile(recordText)?.entries ?? []);
  return Math.max(0, ...entries.flatMap(({ rows }) => rows.map(({ stage }) => stage)));
}

function taken(run: RunReadings, result: CorrectResult): Taken {
  const { recordText } = result;
  return { run: recordText === undefined ? run : { recordText }, result };
}

function resultWith(run: RunReadings, rows: readonly Row[], planText: string): CorrectResult {
  const text = `${readingsText(run)}${rows.map((row) => `${lineOf(row)}\n`).join('')}`;
  return correctRun({ planText, readingsText: text, recordText: run.recordText });
}

function rowCount({ recordText }: RunReadings): number {
  return recordText === undefined ? 0 : readingsText({ recordText }).trimEnd().split('\n').length - 1;
}

function rowOfReading({ kind, value, ...row }: ReadingPut): Row {
  return { ...row, [kind]: value };
}

/** One line; no cell but the last, the note, may hold a comma. */
function lineOf(row: Row): string {
  return READING_COLUMNS.map((column) => {
    const words = String(row[column] ?? '')
      .replaceAll(/\s+/g, ' ')
      .trim();
    return column === 'note' ? words : words.replaceAll(',', ';');
  }).join(',');
}

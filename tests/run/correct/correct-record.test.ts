/** The record of a run: what of it may not change, and what is reported where it did. */
import { describe, expect, test } from 'vitest';
import type { Finding } from '#findings/finding.ts';
import { readReadings } from '#run/correct-readings.ts';
import { growRecord, readRecord, recordText, rowsOfRun } from '#run/correct-record.ts';

const PLAN = '{"plan":"of a buoy lid"}';
const HEAD = 'thickness,who,stage,region,x,y,minutes,unit,note';
const rowsIn = (...rows: readonly string[]) => readReadings([HEAD, ...rows].join('\n')).rows;
const FIRST = '3.21,M. K.,1,R02,,,12.5,mm,dry';
const SECOND = '2.94,,1,,30.5,-4,20,,';
const THIRD = '2.05,J. T.,2,R02,,,3,mm,wet, wiped';

function open(text: string | undefined) {
  const read = readRecord(PLAN, text);
  if ('refused' in read) throw new Error(JSON.stringify(read.refused));
  return read.record;
}
function grown(text: string | undefined, rows: readonly string[], minutesLeft: readonly number[]): string {
  const record = open(text);
  const run = rowsOfRun(record, rowsIn(...rows));
  if ('refused' in run) throw new Error(JSON.stringify(run.refused));
  return recordText(growRecord(record, run, minutesLeft));
}
const refusal = (result: object): Finding | undefined =>
  'refused' in result ? (result.refused as Finding) : undefined;
const once = () => grown(undefined, [FIRST, SECOND], [8.12345678, 31]);
const twice = () => grown(once(), [FIRST, SECOND, THIRD], [0, 27.5]);

describe('a record', () => {
  test('holds each row once, as it was given, in the order of the schema, with the minutes left', () => {
    const { entries, plan, format, version } = JSON.parse(twice());
    expect([format, version, plan.length]).toEqual(['isobath-run', 1, 64]);
    expect(entries.map(({ rows }: { rows: object[] }) => rows.map((row) => Object.entries(row)))).toEqual([
      [
        [
          ['stage', 1],
          ['minutes', 12.5],
          ['region', 'R02'],
          ['thickness', 3.21],
          ['unit', 'mm'],
          ['who', 'M. K.'],
          ['note', 'dry'],
        ],
        [
          ['stage', 1],
          ['minutes', 20],
          ['x', 30.5],
          ['y', -4],
          ['thickness', 2.94],
        ],
      ],
      [
        [
          ['stage', 2],
          ['minutes', 3],
          ['region', 'R02'],
          ['thickness', 2.05],
          ['unit', 'mm'],
          ['who', 'J. T.'],
          ['note', 'wet, wiped'],
        ],
      ],
    ]);
    expect(entries.map(({ minutesLeft }: { minutesLeft: number[] }) => minutesLeft)).toEqual([
      [8.123457, 31],
      [0, 27.5],
    ]);
  });

  test('is the same where nothing is new, and knows how many rows it has', () => {
    const record = open(twice());
    const run = rowsOfRun(record, rowsIn(FIRST, SECOND, THIRD));
    expect('known' in run && run.known).toBe(3);
    if ('known' in run) expect(growRecord(record, run, [1, 2])).toBe(record);
  });

  test('recorded rows come first, wherever the new ones stand in the file', () => {
    const run = rowsOfRun(open(once()), rowsIn(THIRD, FIRST, SECOND));
    expect('rows' in run && run.rows.map(({ line }) => line)).toEqual([3, 4, 2]);
  });

  test('two rows alike are two', () => {
    const record = open(grown(undefined, [FIRST, FIRST], [3]));
    expect(refusal(rowsOfRun(record, rowsIn(FIRST)))?.code).toBe('readings-rewritten');
    const run = rowsOfRun(record, rowsIn(FIRST, FIRST, FIRST));
    expect('rows' in run && [run.rows.length, run.known]).toEqual([3, 2]);
  });
});

describe('readings-rewritten', () => {
  test('which recorded row is no more, of how many, and the line that stands in its place', () => {
    const record = open(twice());
    expect(refusal(rowsOfRun(record, rowsIn(FIRST, SECOND.replace('2.94', '2.95'), THIRD)))).toMatchObject({
      code: 'readings-rewritten',
      facts: { recorded: 3, row: 2 },
      place: { line: 3 },
    });
    expect(refusal(rowsOfRun(record, rowsIn(FIRST, SECOND)))).toMatchObject({
      facts: { recorded: 3, row: 3 },
      place: {},
    });
    expect(refusal(rowsOfRun(record, rowsIn(FIRST, SECOND)))?.place).toEqual({});
  });

  test('whoever gauged, and with what unit, may not change either', () => {
    const record = open(twice());
    for (const first of [
      FIRST.replace('M. K.', 'M. L.'),
      FIRST.replace(',mm,', ',in,'),
      FIRST.replace('dry', ''),
    ])
      expect(refusal(rowsOfRun(record, rowsIn(first, SECOND, THIRD)))?.facts).toMatchObject({ row: 1 });
  });
});

describe('run-record-unusable', () => {
  const why = (text: string, plan = PLAN) => refusal(readRecord(plan, text))?.facts;

  test('no record, or one that was altered: a figure, a name, the minutes left, an entry gone', () => {
    const record = JSON.parse(twice());
    const [first, second] = record.entries;
    const altered = [
      twice().replace('3.21', '3.12'),
      twice().replace('M. K.', 'M. L.'),
      twice().replace('27.5', '25.7'),
      JSON.stringify({ ...record, entries: [second] }),
      JSON.stringify({ ...record, entries: [second, first] }),
      '{}',
      'gauged by hand',
    ];
    for (const text of altered) expect(why(text)).toEqual({ why: 'damaged' });
    expect(why(JSON.stringify({ ...record, entries: [first] }))).toBeUndefined();
  });

  test('one of another plan', () => {
    expect(why(twice(), `${PLAN} `)).toEqual({ why: 'other-plan' });
    const none = recordText(open(undefined));
    expect([why(none), why(none, '{}')]).toEqual([undefined, { why: 'other-plan' }]);
  });
});

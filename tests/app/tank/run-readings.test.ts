/** Rows that go in at the tank, what comes of them, and the record that the command line goes on with. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openRecord } from '#app/state/tank/open-record.ts';
import {
  answerReading,
  confirmNew,
  endStage,
  expectedOf,
  NO_READINGS,
  type ReadingPut,
  type RunReadings,
  readingsText,
  resultOf,
  tryReading,
} from '#app/state/tank/run-readings.ts';
import { correctRun } from '#run/correct-run.ts';
import { runJob } from '#run/run-job.ts';

const job = JSON.parse(readFileSync('samples/gauge-pod-cover.job.json', 'utf8'));
const { files, planFile } = await runJob({
  jobText: JSON.stringify(job),
  drawingName: job.drawing,
  drawingBytes: readFileSync(`samples/${job.drawing}`),
});
const planText = new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes);
const sump = planFile?.regions.find(({ level }) => Math.abs(level - 3) < 1e-6)?.id ?? '';
const first = {
  stage: 1,
  minutes: 20,
  region: sump,
  kind: 'depth',
  unit: 'mm',
  who: 'M. K.',
  when: '2026-03-09 13:40',
  gauge: 'U-7, blue',
} as const;

function take(run: RunReadings, put: ReadingPut): RunReadings {
  const tried = tryReading(run, put, planText);
  if (!('taken' in tried)) throw new Error(`not taken: ${JSON.stringify(tried)}`);
  return tried.taken.run;
}

function takeAll(values: readonly number[]): RunReadings {
  return values.reduce((run, value) => take(run, { ...first, value }), NO_READINGS);
}

const listed = (run: RunReadings) => resultOf(run, planText)?.readings ?? [];

it('at the planned rate the stage needs what the plan said, less what it had', () => {
  // 0.0297 mm/min for 20 min; stage 1 etches 0.8 mm, in 26.94 min.
  const corrected = resultOf(takeAll([0.594, 0.595, 0.593]), planText)?.corrected;
  expect(corrected?.stages[0]?.left.value).toBeCloseTo(0.8 / 0.0297 - 20, 1);
  expect(corrected?.stages.map(({ had }) => had)).toEqual([20, 0, 0]);
});

it('comes to what the command line calculates from the readings that are saved, and to the same rows', () => {
  const run = takeAll([0.65, 0.66, 0.66]);
  const command = correctRun({ planText, readingsText: readingsText(run), recordText: undefined });
  expect(resultOf(run, planText)?.corrected).toEqual(command.corrected);
  const rows = (text: string | undefined) =>
    JSON.parse(text ?? '{}').entries.flatMap((entry: { rows: unknown[] }) => entry.rows);
  expect(rows(run.recordText)).toEqual(rows(command.recordText));
  // A cell may hold no comma.
  expect(rows(run.recordText)[0]).toMatchObject({
    unit: 'mm',
    who: 'M. K.',
    when: '2026-03-09 13:40',
    gauge: 'U-7; blue',
  });
  // And with the record beside it nothing is new.
  const again = correctRun({ planText, readingsText: readingsText(run), recordText: run.recordText });
  expect(again.recordText).toBe(run.recordText);
});

it('a reading that cannot be is refused, and the record stays as it was', () => {
  const tried = tryReading(takeAll([0.59]), { ...first, region: 'R99', value: 0.6 }, planText);
  expect('refused' in tried && tried.refused.map(({ code }) => code)).toEqual(['reading-unclear']);
  const land = planFile?.regions.find(({ level }) => level === 0)?.id ?? '';
  const onLand = tryReading(NO_READINGS, { ...first, region: land, value: 0.6 }, planText);
  expect('refused' in onLand && onLand.refused.map(({ code }) => code)).toEqual(['reading-off-floor']);
});

describe('a reading that does not fit', () => {
  it('an inch figure read as mm asks, with what it is in inches, and counts in inches', () => {
    // 0.594 mm are 0.0234 in.
    const put = { ...first, value: 0.0234 };
    const tried = tryReading(NO_READINGS, put, planText);
    if (!('question' in tried)) throw new Error('it was not asked about');
    expect(tried.question.inOtherUnit).toEqual({ unit: 'in', value: expect.closeTo(0.0234 * 25.4, 9) });
    const run = take(NO_READINGS, { ...put, unit: 'in' });
    expect(listed(run)[0]).toMatchObject({ state: 'counts', unit: 'in', read: expect.closeTo(0.59436, 6) });
  });

  it('a rate off by more than a quarter, and a floor less deep than before, ask and count once confirmed', () => {
    // 0.594 mm are expected; a quarter more are 0.7425.
    expect('taken' in tryReading(NO_READINGS, { ...first, value: 0.74 }, planText)).toBe(true);
    const fast = { ...first, value: 0.75 };
    const tried = tryReading(NO_READINGS, fast, planText);
    expect('question' in tried && tried.question.why).toBe('rate');
    const { run } = confirmNew(NO_READINGS, fast, 'gauged again, twice', planText);
    expect(listed(run)).toMatchObject([
      { state: 'counts', answer: { reason: 'gauged again, twice', who: 'M. K.' } },
    ]);
    const later = tryReading(takeAll([0.6]), { ...first, minutes: 24, value: 0.5 }, planText);
    expect('question' in later && later.question.why).toBe('rose');
  });

  it('a sheet thicker than it can be asks', () => {
    const put = { ...first, stage: 0, minutes: undefined, kind: 'thickness', value: 4.9 } as const;
    const tried = tryReading(NO_READINGS, put, planText);
    expect('question' in tried && tried.question.why).toBe('sheet');
  });
});

it('struck out a reading stays in the list with its reason, counts no more, and the record has grown', () => {
  const before = takeAll([0.594, 0.63]);
  const answer = { number: 2, kind: 'strike', reason: 'gauge not set to zero' } as const;
  const { run } = answerReading(before, { ...answer, who: 'M. K.', when: '2026-03-09 13:52' }, planText);
  expect(listed(run).map(({ state }) => state)).toEqual(['counts', 'struck']);
  expect(listed(run)[1]?.answer?.reason).toBe('gauge not set to zero');
  const alone = resultOf(takeAll([0.594]), planText)?.corrected;
  expect(resultOf(run, planText)?.corrected?.next.value).toBeCloseTo(alone?.next.value ?? 0, 9);
  expect(readingsText(run).startsWith(readingsText(before))).toBe(true);
});

const ended = { who: '', when: '2026-03-09 14:02', next: undefined };

it('what a stage had in all is a row of the record, and so it is without a reading', () => {
  const { run, result } = endStage(
    takeAll([0.594]),
    { ...ended, stage: 1, minutes: 26.5 },
    { recorded: 20, planText },
  );
  expect(result.corrected?.stages[0]?.had).toBe(26.5);
  expect(listed(run)).toHaveLength(1);
  // Without any reading, too: the next stages then start from the plan's rate.
  const alone = endStage(NO_READINGS, { ...ended, stage: 1, minutes: 26.9 }, { recorded: 0, planText });
  expect(alone.result.corrected?.stages[0]?.had).toBe(26.9);
});

it('minutes left unused when the next stage begins are left no more, and the floor is expected to stay thicker by them', () => {
  const run = takeAll([0.594, 0.595, 0.593]);
  const before = resultOf(run, planText)?.corrected?.stages;
  const given = { recorded: 20, planText };
  const { run: on, result } = endStage(run, { ...ended, stage: 1, minutes: 20, next: 2 }, given);
  const [first] = result.corrected?.stages ?? [];
  const depthOf = (of: typeof result) =>
    of.corrected?.regions.find(({ id }) => id === sump)?.depth.value ?? 0;
  expect(before?.[0]?.left.value).toBeGreaterThan(6);
  expect(first).toMatchObject({ had: 20, left: { value: 0 } });
  // 0.8 mm less what 20 min took.
  const planned = resultOf(run, planText) ?? result;
  expect(depthOf(planned) - depthOf(result)).toBeCloseTo(0.8 - 0.594, 2);
  expect(result.findings).toContainEqual(expect.objectContaining({ code: 'depth-out-of-reach' }));
  // Said twice it is recorded once.
  expect(endStage(on, { ...ended, stage: 1, minutes: 20, next: 2 }, given).run).toEqual(on);
});

it('says what a floor should read, whatever was read', () => {
  const at = { stage: 1, minutes: 20, region: sump };
  expect(expectedOf(NO_READINGS, { ...at, kind: 'depth' }, planText)).toBeCloseTo(0.594, 6);
  const left = expectedOf(NO_READINGS, { ...at, kind: 'thickness' }, planText);
  expect(left).toBeGreaterThan(3.3);
  expect(left).toBeLessThan(3.5);
});

describe('an earlier record', () => {
  const here = takeAll([0.59, 0.6]);

  it('is gone on with where nothing is here, or where it goes on from what is here', () => {
    expect(openRecord(here.recordText ?? '', NO_READINGS, planText)).toEqual({
      run: here,
      stands: 'further',
    });
    const start = takeAll([0.59]);
    expect(openRecord(here.recordText ?? '', start, planText)).toMatchObject({ stands: 'further' });
    expect(openRecord(start.recordText ?? '', here, planText)).toMatchObject({ stands: 'behind' });
  });

  it('that has other readings than those kept here is told apart, and what is no record of this plan is refused', () => {
    const other = takeAll([0.59, 0.61]);
    expect(openRecord(other.recordText ?? '', here, planText)).toMatchObject({ stands: 'apart' });
    const altered = (here.recordText ?? '').replace('0.59', '0.58');
    for (const text of [altered, '{}', 'no record']) {
      const opened = openRecord(text, here, planText);
      expect('refused' in opened && opened.refused.map(({ code }) => code)).toEqual(['run-record-unusable']);
    }
  });
});

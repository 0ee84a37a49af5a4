/**
 * The readings of a run in their places, and which of them count (M7.4): neither those struck out nor those asked about and not confirmed.
 */
import { type Finding, finding, hasStop, type Place } from '#findings/finding.ts';
import { nearestWord } from '#findings/nearest-word.ts';
import { depthAt } from '#front/depth-at.ts';
import { type FrontIndex, indexFront } from '#front/front-index.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { ON_FLOOR, SAME_LEVEL } from '#units/depth-tolerances.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { type Answers, isReading } from './answers.ts';
import { bareSpell } from './bare-spell.ts';
import type { Reading } from './correct-fit.ts';
import type { PlanRead, RunRegion } from './correct-plan.ts';
import { peelMinutes, type RunSoFar } from './correct-rates.ts';
import type { ReadingRow } from './correct-readings.ts';
import { type ListedReading, listedReading } from './listed-readings.ts';
import { type Question, questionReadings } from './question-readings.ts';

export interface Judged {
  readonly soFar: RunSoFar;
  /** Those that count. */
  readonly counting: readonly PlacedReading[];
  /** All of them, in the order of the rows. */
  readonly listed: readonly ListedReading[];
  readonly findings: readonly Finding[];
}

/** Findings: `reading-unclear`, with which nothing counts; `reading-off-floor`, `reading-in-question`. */
export function judgeReadings(read: PlanRead, rows: readonly ReadingRow[], answers: Answers): Judged {
  const soFar = runSoFar(read, rows, answers);
  const { readings: placed, findings } = placeReadings(read, rows, soFar.had);
  if (hasStop(findings)) return { soFar, counting: [], listed: [], findings };
  const judged = judgePlaced(read.plan, placed, answers);
  return { ...judged, soFar, findings: [...findings, ...judged.findings] };
}

/** Findings: `reading-in-question`. */
function judgePlaced(
  plan: PlanRead['plan'],
  placed: readonly PlacedRow[],
  answers: Answers,
): Omit<Judged, 'soFar'> {
  const standing = placed.flatMap((each) =>
    each.reading === undefined || answers.struck.has(each.number) ? [] : [{ ...each, reading: each.reading }],
  );
  const asks = standing.map(({ reading, unit, number }) => ({
    reading,
    unit,
    isConfirmed: answers.confirmed.has(number),
  }));
  const answered = new Map(
    questionReadings(plan, asks).map((each, index) => [itemAt(standing, index).number, each]),
  );
  const listed = placed.map((each) =>
    listedReading({ ...each, answered: answered.get(each.number) }, answers),
  );
  const stateOf = new Map(listed.map(({ number, state }) => [number, state]));
  return {
    counting: standing.filter(({ number }) => stateOf.get(number) === 'counts'),
    listed,
    findings: standing.flatMap(({ number, region, row: { line } }) => {
      const { question } = answered.get(number) ?? {};
      if (question === undefined || stateOf.get(number) !== 'asked') return [];
      return [questionFinding(number, question, { line, regions: [region] })];
    }),
  };
}

function questionFinding(number: number, question: Question, place: Place): Finding {
  const { why, read, expected, rate, inOtherUnit } = question;
  return finding('reading-in-question', { number, why, read, expected, rate, inOtherUnit }, place);
}

/** A stage had the most minutes that any row gives it; one that the run has passed without a word had its planned ones. */
function runSoFar({ plan }: PlanRead, all: readonly ReadingRow[], { struck }: Answers): RunSoFar {
  const rows = all.filter((_, index) => !struck.has(index + 1));
  const current = Math.min(plan.stages.length, Math.max(0, ...rows.map(({ stage }) => stage))) - 1;
  const had = plan.stages.map((stage, index) => {
    const minutes = rows.flatMap((row) => (row.stage === index + 1 ? (row.minutes ?? []) : []));
    if (minutes.length > 0) return Math.max(...minutes);
    return index <= current ? stage.minutes : 0;
  });
  return { had, current };
}

/** A row with a reading, in its place. */
interface PlacedRow {
  readonly row: ReadingRow;
  /** In the run, from 1. */
  readonly number: number;
  readonly region: string;
  /** mm */
  readonly read: number;
  readonly unit: ShownUnit;
  /** Undefined where it is not on a floor. */
  readonly reading: Reading | undefined;
}

export interface PlacedReading extends PlacedRow {
  readonly reading: Reading;
}

interface Placed {
  readonly readings: readonly PlacedRow[];
  readonly findings: readonly Finding[];
}

function placeReadings(read: PlanRead, rows: readonly ReadingRow[], had: readonly number[]): Placed {
  const readings: PlacedRow[] = [];
  const findings: Finding[] = [];
  const peeled = peelMinutes(had);
  const index = indexFront(read.front);
  for (const [at, row] of rows.entries()) {
    if (!isReading(row)) continue;
    const placed = placeReading(row, { read, had, peeled, index });
    if ('refused' in placed) findings.push(placed.refused);
    const unit = row.unit ?? read.jobUnit;
    const value = (row.depth ?? row.thickness ?? 0) * millimetresIn(unit);
    const reading = 'reading' in placed ? placed.reading : undefined;
    const region = row.region ?? reading?.region ?? '';
    readings.push({ row, number: at + 1, region, read: value, unit, reading });
  }
  return { readings, findings };
}

interface Setting {
  readonly read: PlanRead;
  readonly had: readonly number[];
  readonly peeled: readonly number[];
  readonly index: FrontIndex;
}

/** Findings: `reading-unclear`, `reading-off-floor`. */
function placeReading(
  row: ReadingRow,
  { read, had, peeled, index }: Setting,
): { readonly reading: Reading } | { readonly refused: Finding } {
  const { plan, jobUnit } = read;
  const place = { line: row.line };
  if (row.stage > plan.stages.length) {
    const facts = { column: 'stage', found: `${row.stage}`, expected: `at most ${plan.stages.length}` };
    return { refused: finding('reading-unclear', facts, place) };
  }
  const id = row.region ?? regionAt(row, read);
  const region = plan.regions.find((each) => each.id === id);
  if (region === undefined) {
    const ids = plan.regions.map((each) => each.id);
    const meant = id === undefined ? undefined : nearestWord(id, ids);
    const expected = meant === undefined ? 'a region of the plan, or a point in one' : `perhaps ${meant}`;
    const facts = { column: 'region', found: id ?? 'a point outside every region', expected };
    return { refused: finding('reading-unclear', facts, place) };
  }
  if (row.thickness !== undefined && row.stage > 0 && plan.hasFarFloors === true) {
    const facts = {
      column: 'thickness',
      found: 'a thickness of a part that is etched on both faces',
      expected: 'the depth of the floor, from its own face',
    };
    return { refused: finding('reading-unclear', facts, place) };
  }
  const offFloor = (why: 'wall' | 'land' | 'not-open') => ({
    refused: finding('reading-off-floor', { region: region.id, why }, place),
  });
  const stage = plan.stages.findIndex(({ level }) => Math.abs(level - region.level) < SAME_LEVEL);
  // With a new coat for each stage every floor is etched from the first stage on.
  const isOpen = stage >= 0 && (plan.masking === 're-mask' ? row.stage > 0 : stage < row.stage);
  if (row.region === undefined && region.level > 0) {
    const at = placeOf(row, read);
    if (Math.abs(depthAt(index, at).depth - region.level) > ON_FLOOR) return offFloor('wall');
  }
  if (row.depth !== undefined && !isOpen) return offFloor(stage < 0 ? 'land' : 'not-open');
  const started = itemAt(peeled, Math.max(0, row.stage - 1));
  const minute = row.stage === 0 ? 0 : started + (row.minutes ?? itemAt(had, row.stage - 1));
  const reading: Reading = {
    stage: row.stage - 1,
    bare: bareSpell({ masking: plan.masking, peeled, stage }, minute),
    region: region.id,
    kind: row.depth === undefined ? 'thickness' : 'depth',
    value: readAlone(row, region, jobUnit),
  };
  return { reading };
}

/** mm, as if this face alone were etched. */
function readAlone(row: ReadingRow, { behind = 0 }: RunRegion, jobUnit: ShownUnit): number {
  const value = (row.depth ?? row.thickness ?? 0) * millimetresIn(row.unit ?? jobUnit);
  return row.depth === undefined && row.stage > 0 ? value + behind : value;
}

/** In the frame that the plan's borders are read in. */
function placeOf({ x = 0, y = 0 }: ReadingRow, { drawingUnit, origin }: PlanRead): Point {
  return { x: x * drawingUnit - origin.x, y: y * drawingUnit - origin.y };
}

function regionAt(row: ReadingRow, read: PlanRead): string | undefined {
  return read.regionAt(placeOf(row, read));
}

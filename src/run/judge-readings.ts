/**
 * The readings of a run in their places, and which of them count (M7.4): neither those struck out nor those asked about and not confirmed.
 */
import { type Finding, finding, hasStop, type Place } from '#findings/finding.ts';
import { nearestWord } from '#findings/nearest-word.ts';
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
import { type FloorBehind, floorBehind } from './run-face.ts';

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
    listedReading(
      { ...each, behind: each.reading?.behind?.region, answered: answered.get(each.number) },
      answers,
    ),
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
  for (const [at, row] of rows.entries()) {
    if (!isReading(row)) continue;
    const placed = placeReading(row, { read, had, peeled });
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
}

/** Findings: `reading-unclear`, `reading-off-floor`. */
function placeReading(
  row: ReadingRow,
  { read, had, peeled }: Setting,
): { readonly reading: Reading } | { readonly refused: Finding } {
  const { plan, jobUnit } = read;
  const { masking } = plan;
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
  const stage = stageOf(plan, region);
  const behind = row.depth === undefined ? behindOf(row, region, read) : undefined;
  const off = whyOff(row, { region, stage, behind, read });
  if (off !== undefined) {
    return { refused: finding('reading-off-floor', { region: region.id, why: off }, place) };
  }
  const started = itemAt(peeled, Math.max(0, row.stage - 1));
  const minute = row.stage === 0 ? 0 : started + (row.minutes ?? itemAt(had, row.stage - 1));
  const other =
    typeof behind === 'object' ? plan.regions.find((each) => each.id === behind.floor) : undefined;
  return {
    reading: {
      stage: row.stage - 1,
      bare: bareSpell({ masking, peeled, stage }, minute),
      region: region.id,
      kind: row.depth === undefined ? 'thickness' : 'depth',
      value: (row.depth ?? row.thickness ?? 0) * millimetresIn(row.unit ?? jobUnit),
      ...(other === undefined
        ? {}
        : {
            behind: {
              region: other.id,
              bare: bareSpell({ masking, peeled, stage: stageOf(plan, other) }, minute),
            },
          }),
    },
  };
}

/** Index; -1 for land. */
function stageOf({ stages }: PlanRead['plan'], { level }: RunRegion): number {
  return stages.findIndex((each) => Math.abs(each.level - level) < SAME_LEVEL);
}

/** Of the other face: where the row says, else at the region's label. */
function behindOf(row: ReadingRow, region: RunRegion, read: PlanRead): FloorBehind | undefined {
  const other = region.face === 'far' ? read.near : read.far;
  const at = placeOf(row, read);
  return other === undefined || at === undefined ? region.behind : floorBehind(other, at);
}

interface OffAsk {
  readonly region: RunRegion;
  readonly stage: number;
  readonly behind: FloorBehind | undefined;
  readonly read: PlanRead;
}

/** Why a reading says nothing of a floor. */
function whyOff(
  row: ReadingRow,
  { region, stage, behind, read }: OffAsk,
): 'wall' | 'land' | 'not-open' | 'behind' | undefined {
  const { plan, near, far } = read;
  const own = region.face === 'far' ? far : near;
  const at = row.region === undefined || far !== undefined ? placeOf(row, read) : undefined;
  if (at !== undefined && own !== undefined && region.level > 0) {
    const isOther = row.region !== undefined && own.regionAt(at)?.id !== region.id;
    if (isOther || Math.abs(own.depthAt(at) - region.level) > ON_FLOOR) return 'wall';
  }
  // With a new coat for each stage every floor is etched from the first stage on.
  const isOpen = stage >= 0 && (plan.masking === 're-mask' ? row.stage > 0 : stage < row.stage);
  if (row.depth !== undefined && !isOpen) return stage < 0 ? 'land' : 'not-open';
  return row.stage > 0 && behind === 'wall' ? 'behind' : undefined;
}

/** In the frame that the plan's borders are read in; undefined where the row names none. */
function placeOf({ x, y }: ReadingRow, { drawingUnit, origin }: PlanRead): Point | undefined {
  if (x === undefined || y === undefined) return undefined;
  return { x: x * drawingUnit - origin.x, y: y * drawingUnit - origin.y };
}

/** Of the near face; but where that is land and a thickness was read, the floor of the far face through it. */
function regionAt(row: ReadingRow, read: PlanRead): string | undefined {
  const at = placeOf(row, read);
  if (at === undefined) return undefined;
  const near = read.near.regionAt(at);
  const far = row.thickness === undefined || near?.level !== 0 ? undefined : read.far?.regionAt(at);
  return far !== undefined && far.level > 0 ? far.id : near?.id;
}

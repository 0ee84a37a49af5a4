/**
 * Corrects a run: a plan, the readings so far and the record so far go in; rates, minutes left, what will come out, findings
 * and the grown record come out. Nothing is read from or written to a disk here.
 */
import { type Finding, finding, hasStop, sortFindings } from '#findings/finding.ts';
import { nearestWord } from '#findings/nearest-word.ts';
import { depthAt } from '#front/depth-at.ts';
import { type FrontIndex, indexFront } from '#front/front-index.ts';
import { itemAt } from '#geometry/assert.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Point } from '#geometry/point.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { bareSpell } from './bare-spell.ts';
import type { Reading } from './correct-fit.ts';
import { type PlanRead, readRunPlan } from './correct-plan.ts';
import { correctRates, peelMinutes, type RunCorrected } from './correct-rates.ts';
import { type ReadingRow, readReadings } from './correct-readings.ts';
import { findRewritten, growRecord, readRecord, recordText } from './correct-record.ts';

export interface CorrectInput {
  readonly planText: string;
  readonly readingsText: string;
  readonly recordText: string | undefined;
}

export interface CorrectResult {
  readonly findings: readonly Finding[];
  /** Undefined where the input could not be used. */
  readonly corrected?: RunCorrected;
  /** The job's, which readings are written in. */
  readonly unit?: ShownUnit;
  /** The record to keep, whole. */
  readonly recordText?: string;
}

/** Deviations of a reading beyond which it stands apart, in standard deviations: 1 in 16 000 by chance. */
const APART = 4;

/** Share of the planned rate below which no minutes are calculated: our own choice, far below any bath that still works. */
const LEAST_RATE_SHARE = 0.01;

export function correctRun(input: CorrectInput): CorrectResult {
  const read = readRunPlan(input.planText);
  if ('refused' in read) return { findings: [read.refused] };
  const unit = read.jobUnit;
  const kept = readRecord(input.planText, input.recordText);
  if ('refused' in kept) return { unit, findings: [kept.refused] };
  const { rows, findings } = readReadings(input.readingsText);
  if (hasStop(findings)) return { unit, findings: sortFindings(findings) };
  const rewritten = findRewritten(kept.record, rows);
  if (rewritten !== undefined) return { unit, findings: [rewritten] };

  const soFar = runSoFar(read, rows);
  const placed = placeReadings(read, rows, soFar.had);
  if (hasStop(placed.findings)) return { unit, findings: sortFindings(placed.findings) };
  const readings = placed.readings.map(({ reading }) => reading);
  const ungauged = findUngauged(read, placed.readings);
  if (ungauged.length > 0) return { unit, findings: sortFindings(ungauged) };
  const corrected = correctRates(read.plan, readings, soFar);
  const { next } = corrected;
  if (next.value < LEAST_RATE_SHARE * read.plan.rate) {
    return { unit, findings: [finding('no-metal-taken', { rate: next.value, planned: read.plan.rate })] };
  }
  const apart = placed.readings.flatMap(({ line }, index) => {
    const off = itemAt(corrected.off, index);
    const facts = { off: off * corrected.noise, noise: corrected.noise };
    return Math.abs(off) > APART ? [finding('readings-disagree', facts, { line })] : [];
  });
  const record = growRecord(
    kept.record,
    rows,
    corrected.stages.map(({ left }) => left.value),
  );
  return {
    findings: sortFindings([...placed.findings, ...apart, ...judge(read, corrected)]),
    corrected,
    unit,
    recordText: recordText(record),
  };
}

/** A stage had the most minutes that any row tells of it; one that the run has passed without a word had its planned ones. */
function runSoFar({ plan }: PlanRead, rows: readonly ReadingRow[]) {
  const current = Math.min(plan.stages.length, Math.max(0, ...rows.map(({ stage }) => stage))) - 1;
  const had = plan.stages.map((stage, index) => {
    const minutes = rows.flatMap((row) => (row.stage === index + 1 ? (row.minutes ?? []) : []));
    if (minutes.length > 0) return Math.max(...minutes);
    return index <= current ? stage.minutes : 0;
  });
  return { had, current };
}

interface Placed {
  readonly readings: readonly { readonly reading: Reading; readonly line: number }[];
  readonly findings: readonly Finding[];
}

function placeReadings(read: PlanRead, rows: readonly ReadingRow[], had: readonly number[]): Placed {
  const readings: { reading: Reading; line: number }[] = [];
  const findings: Finding[] = [];
  const peeled = peelMinutes(had);
  const index = indexFront(read.front);
  for (const row of rows) {
    if (row.depth === undefined && row.thickness === undefined) continue;
    const { line } = row;
    const placed = placeReading(row, { read, had, peeled, index });
    if ('reading' in placed) readings.push({ ...placed, line });
    else findings.push(placed.refused);
  }
  return { readings, findings };
}

/** Thicknesses that say nothing of a depth: nothing is known of a tapered sheet but what was gauged before stage 1. */
function findUngauged({ plan }: PlanRead, placed: Placed['readings']): Finding[] {
  if (plan.sheet !== undefined) return [];
  const thicknesses = placed.filter(({ reading }) => reading.kind === 'thickness');
  const gauged = new Set(thicknesses.flatMap(({ reading }) => (reading.stage < 0 ? [reading.region] : [])));
  return thicknesses
    .filter(({ reading }) => !gauged.has(reading.region))
    .map(({ reading: { region }, line }) =>
      finding('sheet-not-gauged', { region }, { line, regions: [region] }),
    );
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
  const offFloor = (why: 'wall' | 'land' | 'not-open') => ({
    refused: finding('reading-off-floor', { region: region.id, why }, place),
  });
  const stage = plan.stages.findIndex(({ level }) => Math.abs(level - region.level) < 1e-5);
  // With a coat a stage every floor is etched from the first stage on.
  const isOpen = stage >= 0 && (plan.masking === 're-mask' ? row.stage > 0 : stage < row.stage);
  if (row.region === undefined && region.level > 0) {
    const at = placeOf(row, read);
    if (Math.abs(depthAt(index, at).depth - region.level) > 1e-3) return offFloor('wall');
  }
  if (row.depth !== undefined && !isOpen) return offFloor(stage < 0 ? 'land' : 'not-open');
  const started = itemAt(peeled, Math.max(0, row.stage - 1));
  const minute = row.stage === 0 ? 0 : started + (row.minutes ?? itemAt(had, row.stage - 1));
  const reading: Reading = {
    stage: row.stage - 1,
    bare: bareSpell({ masking: plan.masking, peeled, stage }, minute),
    region: region.id,
    kind: row.depth === undefined ? 'thickness' : 'depth',
    value: (row.depth ?? row.thickness ?? 0) * millimetresIn(jobUnit),
  };
  return { reading };
}

/** In the frame that the plan's borders are read in. */
function placeOf({ x = 0, y = 0 }: ReadingRow, { drawingUnit, origin }: PlanRead): Point {
  return { x: x * drawingUnit - origin.x, y: y * drawingUnit - origin.y };
}

function regionAt(row: ReadingRow, read: PlanRead): string | undefined {
  const point = placeOf(row, read);
  return [...read.loops].find(([, border]) => isInsideLoops(border, point))?.[0];
}

/** Findings: `rate-outside-spread`, `depth-out-of-reach`, `depth-in-doubt`. */
function judge({ plan }: PlanRead, { stages, regions }: RunCorrected): Finding[] {
  const findings: Finding[] = [];
  const planned = plan.rate;
  const latest = stages.flatMap(({ rate }) => rate ?? []).at(-1);
  if (latest !== undefined && Math.abs(latest.value - planned) > plan.rateSpread * planned + latest.within) {
    findings.push(finding('rate-outside-spread', { rate: latest.value, planned, spread: plan.rateSpread }));
  }
  for (const { id, asked, depth, verdict } of regions) {
    const limits = { low: asked.depth - asked.minus, high: asked.depth + asked.plus };
    const facts = { depth: depth.value, ...limits };
    const place = { regions: [id] };
    if (verdict === 'out of reach') findings.push(finding('depth-out-of-reach', facts, place));
    if (verdict === 'in doubt') {
      findings.push(finding('depth-in-doubt', { ...facts, within: depth.within }, place));
    }
  }
  return findings;
}

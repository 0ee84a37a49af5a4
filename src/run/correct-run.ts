/**
 * Corrects a run: a plan, the readings so far and the record so far go in; rates, minutes left, what will come out, findings
 * and the grown record come out. Nothing is read from or written to a disk here.
 */

import { type Finding, finding, hasStop, sortFindings } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { answersIn } from './answers.ts';
import { type PlanRead, readRunPlan } from './correct-plan.ts';
import { correctRates, type RunCorrected } from './correct-rates.ts';
import { readReadings } from './correct-readings.ts';
import { growRecord, readRecord, recordText, rowsOfRun } from './correct-record.ts';
import { judgeReadings, type PlacedReading } from './judge-readings.ts';
import type { ListedReading } from './listed-readings.ts';

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
  /** Every reading of the run, in the order of the record. */
  readonly readings?: readonly ListedReading[];
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
  const run = rowsOfRun(kept.record, rows);
  if ('refused' in run) return { unit, findings: [run.refused] };
  const answers = answersIn(run.rows);
  if (hasStop(answers.findings)) return { unit, findings: sortFindings(answers.findings) };

  const judged = judgeReadings(read, run.rows, answers);
  const { soFar } = judged;
  if (hasStop(judged.findings)) return { unit, findings: sortFindings(judged.findings) };
  const readings = judged.counting.map(({ reading }) => reading);
  const ungauged = findUngauged(read, judged.counting);
  if (ungauged.length > 0) return { unit, findings: sortFindings(ungauged) };
  const corrected = correctRates(read.plan, readings, soFar);
  const { next } = corrected;
  if (next.value < LEAST_RATE_SHARE * read.plan.rate) {
    return { unit, findings: [finding('no-metal-taken', { rate: next.value, planned: read.plan.rate })] };
  }
  const apart = judged.counting.flatMap(({ row: { line } }, index) => {
    const off = itemAt(corrected.off, index);
    const facts = { off: off * corrected.noise, noise: corrected.noise };
    return Math.abs(off) > APART ? [finding('readings-disagree', facts, { line })] : [];
  });
  const record = growRecord(
    kept.record,
    run,
    corrected.stages.map(({ left }) => left.value),
  );
  return {
    findings: sortFindings([...findings, ...judged.findings, ...apart, ...judge(read, corrected)]),
    corrected,
    unit,
    readings: judged.listed,
    recordText: recordText(record),
  };
}

/** Thicknesses that say nothing of a depth: nothing is known of a tapered sheet but what was gauged before stage 1. */
function findUngauged({ plan }: PlanRead, placed: readonly PlacedReading[]): Finding[] {
  if (plan.sheet !== undefined) return [];
  const thicknesses = placed.filter(({ reading }) => reading.kind === 'thickness');
  const gauged = new Set(thicknesses.flatMap(({ reading }) => (reading.stage < 0 ? [reading.region] : [])));
  return thicknesses
    .filter(({ reading }) => !gauged.has(reading.region))
    .map(({ reading: { region }, row: { line } }) =>
      finding('sheet-not-gauged', { region }, { line, regions: [region] }),
    );
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

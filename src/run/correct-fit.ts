/**
 * The rate that a run really had, from readings (M7). Unknown are the rate between each two moments
 * of reading and the sheet's thickness in each region whose thickness was read; each has its uncertainty from the readings'
 * scatter (JCGM 100:2008, the GUM: pooled standard deviation 4.2 and H.3, rectangular distributions 4.3.7). Weighted least squares, in
 * which a reading that stands apart counts less (`robust-weights.ts`).
 * Cost: cube of the number of unknowns, some tens of times where readings stand apart.
 */

import { assert, itemAt } from '#geometry/assert.ts';
import { ASSUMED_GAUGE_NOISE, DRIFT_MINUTES, GAUGE_STEP } from '#job/process-assumptions.ts';
import { SAME_MOMENT, SURE_RATE, SURE_SHEET } from '#units/depth-tolerances.ts';
import type { BareSpell } from './bare-spell.ts';
import type { RunPlan } from './correct-plan.ts';
import { cappedOff, robustShares, withoutApart } from './robust-weights.ts';

/** A reading in its place: millimetres, minutes. */
export interface Reading {
  /** Index of the stage; -1 before the first dip. */
  readonly stage: number;
  /** Immersed minutes between which what was read had been bare, by the reading. */
  readonly bare: BareSpell;
  readonly region: string;
  readonly kind: 'depth' | 'thickness';
  readonly value: number;
  /** Of a thickness over floors of both faces: the other one's. */
  readonly behind?: { readonly region: string; readonly bare: BareSpell };
}

/** Spells in the bath of all the metal that a reading says something of: one face's, or both. */
export function spellsOf({ bare, behind }: Pick<Reading, 'bare' | 'behind'>): BareSpell[] {
  return behind === undefined ? [bare] : [bare, behind.bare];
}

export interface Fit {
  /** Immersed minutes that readings reach to, rising; between them the rate is taken as even. */
  readonly moments: readonly number[];
  /** Value and standard uncertainty of any sum of the unknowns. */
  readonly sum: (weights: Weights) => { readonly value: number; readonly u: number };
  /** Standard deviation of one reading, mm, and the degrees of freedom it is known with; infinite where it is assumed. */
  readonly noise: { readonly u: number; readonly freedom: number };
  /** Degrees of freedom of every interval: fewer where readings disagree. */
  readonly freedom: number;
  /** By reading: how far it stands off the fit, in standard deviations of one reading. */
  readonly off: readonly number[];
}

export interface Weights {
  /** Immersed minutes from and to: metal removed between them, by all of them together. */
  readonly removed?: { readonly spells: readonly BareSpell[]; readonly sign: 1 | -1 };
  /** Further minutes at the rate that comes next. */
  readonly ahead?: number;
  readonly sheet?: string;
}

/** Repeats enough to be believed. */
const ENOUGH_FREEDOM = 3;

export function fitRates(plan: RunPlan, readings: readonly Reading[]): Fit {
  // What has not been bare yet says nothing of a rate.
  const etched = readings.flatMap((each) =>
    each.stage < 0 ? [] : spellsOf(each).filter(({ from, to }) => to > from),
  );
  const moments = momentsApart(etched.map(({ to }) => to));
  const sheets = [...new Set(readings.filter(({ kind }) => kind === 'thickness').map((each) => each.region))];
  const noise = noiseOf(readings);
  const count = moments.length + 1 + sheets.length;
  const drift = (plan.rate * plan.rateSpread) / Math.sqrt(3);
  const unknowns = { moments, steps: stepsOf(moments, drift), sheets, count };
  const row = (weights: Weights) => weigh(weights, unknowns);
  const rowsAt = (u: number) =>
    readings.map((reading) => ({ weights: row(weightsOf(reading)), value: reading.value, u }));
  const beliefs = believe({ ...unknowns, plan, drift });
  const plain = rowsAt(noise.u);
  const solvedWith = (shares: readonly number[], times = 1) => {
    const rows = plain.map((each, i) => ({ ...each, u: (each.u * times) / Math.sqrt(itemAt(shares, i)) }));
    return solve([...rows, ...beliefs], count);
  };
  const offBy = ({ solution }: Solved) =>
    plain.map(({ weights, value, u }) => (value - dotted(weights, solution)) / u);
  const shares = robustShares(
    plain.map(() => 1),
    (each) => offBy(solvedWith(each)),
  );
  const { solution, covariance } = solvedWith(shares);
  const off = offBy({ solution, covariance });
  const { times, freedom } = disagreement(off, readings.length + beliefs.length - count, noise.freedom);
  const { covariance: spread } = times > 1 ? solvedWith(shares, times) : { covariance };
  return {
    moments,
    noise,
    freedom,
    sum: (weights) => {
      const terms = row(weights);
      let variance = 0;
      for (let i = 0; i < count; i++) {
        for (let j = 0; j < count; j++)
          variance += itemAt(terms, i) * itemAt(terms, j) * itemAt(itemAt(spread, i), j);
      }
      return { value: dotted(terms, solution), u: Math.sqrt(Math.max(0, variance)) };
    },
    off,
  };
}

/** The last moment, and of those before it each that is far enough from the next; rising. */
function momentsApart(minutes: readonly number[]): number[] {
  const kept: number[] = [];
  for (const minute of [...minutes].sort((a, b) => b - a)) {
    const next = kept.at(-1);
    if (next === undefined || next - minute >= SAME_MOMENT) kept.push(minute);
  }
  return kept.reverse();
}

/**
 * How many times further than one reading's scatter the readings stand off the fit (M7.2), and the degrees of freedom that their
 * scatter is known with, as those of coupons (M5.5). Once, where they agree or there are too few to disagree.
 */
function disagreement(
  off: readonly number[],
  spare: number,
  known: number,
): { readonly times: number; readonly freedom: number } {
  const ratio = spare < 1 ? 0 : cappedOff(off).reduce((sum, each) => sum + each * each, 0) / spare;
  if (ratio <= 1) return { times: 1, freedom: known };
  return { times: Math.sqrt(ratio), freedom: Math.min(known, spare / ((1 - 1 / ratio) * (1 - 1 / ratio))) };
}

function weightsOf(reading: Reading): Weights {
  const { kind, region } = reading;
  const removed = { spells: spellsOf(reading), sign: kind === 'depth' ? 1 : -1 } as const;
  return kind === 'depth' ? { removed } : { removed, sheet: region };
}

/**
 * The first rate, each change of the rate in its own standard deviations, and the sheets. So a belief that the rate hardly changes,
 * or not at all, is a row like any other, and the sums keep their digits however small the spread is.
 */
interface Unknowns {
  readonly moments: readonly number[];
  /** Standard deviation of the change after each moment, mm/min; the last leads to the rate that comes next. */
  readonly steps: readonly number[];
  readonly sheets: readonly string[];
  readonly count: number;
}

/**
 * A drift grows as the root of its minutes (a random walk), so that it is the same however often it is looked at: from the
 * middle of one time to the middle of the next; what comes counts as one of DRIFT_MINUTES.
 */
function stepsOf(moments: readonly number[], drift: number): number[] {
  const lengths = moments.map((moment, index) => moment - (moments[index - 1] ?? 0));
  return lengths.map((length, index) => {
    const minutes = (length + (lengths[index + 1] ?? DRIFT_MINUTES.value)) / 2;
    return drift * Math.sqrt(minutes / DRIFT_MINUTES.value);
  });
}

/** One factor an unknown. */
function weigh(
  { removed, ahead = 0, sheet }: Weights,
  { moments, steps, sheets, count }: Unknowns,
): Float64Array {
  // Of each rate between moments, and of the one that comes next.
  const rates = new Float64Array(moments.length + 1);
  rates[moments.length] = ahead;
  for (const { from, to } of removed?.spells ?? []) {
    const sign = removed?.sign ?? 1;
    let before = 0;
    for (const [index, moment] of moments.entries()) {
      const overlap = Math.min(to, moment) - Math.max(from, before);
      if (overlap > 0) rates[index] = itemAt(rates, index) + overlap * sign;
      before = moment;
    }
    const beyond = to - Math.max(from, before);
    if (beyond > 0) rates[moments.length] = itemAt(rates, moments.length) + beyond * sign;
  }
  const terms = new Float64Array(count);
  let after = 0;
  for (let index = moments.length; index > 0; index--) {
    after += itemAt(rates, index);
    terms[index] = after * itemAt(steps, index - 1);
  }
  terms[0] = after + itemAt(rates, 0);
  const place = sheet === undefined ? -1 : sheets.indexOf(sheet);
  if (place >= 0) terms[moments.length + 1 + place] = 1;
  return terms;
}

interface Row {
  readonly weights: Float64Array;
  readonly value: number;
  readonly u: number;
}

/**
 * What is known without a reading: a sheet lies in its tolerance, and in DRIFT_MINUTES the rate drifts by no more than the
 * plan's spread, both as rectangular distributions. The first rate is believed only where no reading gives it.
 */
function believe(given: Unknowns & { readonly plan: RunPlan; readonly drift: number }): Row[] {
  const { plan, moments, sheets, count, drift } = given;
  const rows = moments.map((_, index): Row => {
    const weights = new Float64Array(count);
    weights[index + 1] = 1;
    return { weights, value: 0, u: 1 };
  });
  if (moments.length === 0) {
    rows.push({ weights: weigh({ ahead: 1 }, given), value: plan.rate, u: Math.max(drift, SURE_RATE) });
  }
  for (const sheet of plan.sheet === undefined ? [] : sheets) {
    const { thickness, minus, plus } = plan.sheet ?? { thickness: 0, minus: 0, plus: 0 };
    const u = Math.max(SURE_SHEET, (plus + minus) / 2 / Math.sqrt(3));
    rows.push({ weights: weigh({ sheet }, given), value: thickness + (plus - minus) / 2, u });
  }
  return rows;
}

/** Pooled over repeats of one place at one moment, less those that stand apart; assumed where there are too few. */
function noiseOf(readings: readonly Reading[]): Fit['noise'] {
  const groups = new Map<string, number[]>();
  for (const { bare, stage, region, kind, value, behind } of readings) {
    const key = `${stage} ${bare.to} ${kind} ${region} ${behind?.region ?? ''}`;
    groups.set(key, [...(groups.get(key) ?? []), value]);
  }
  let squares = 0;
  let freedom = 0;
  for (const all of groups.values()) {
    const values = withoutApart(all, ASSUMED_GAUGE_NOISE.value);
    const mean = values.reduce((sum, each) => sum + each, 0) / values.length;
    squares += values.reduce((sum, each) => sum + (each - mean) * (each - mean), 0);
    freedom += values.length - 1;
  }
  if (freedom < ENOUGH_FREEDOM) return { u: ASSUMED_GAUGE_NOISE.value, freedom: Number.POSITIVE_INFINITY };
  // A reading rounded to a step is off by a rectangular distribution of half a step, GUM F.2.2.1.
  return { u: Math.sqrt(squares / freedom + (GAUGE_STEP.value * GAUGE_STEP.value) / 12), freedom };
}

interface Solved {
  readonly solution: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

/** Weighted least squares by the normal equations, inverted by Gauss and Jordan; the unknowns are scaled to like size. */
function solve(rows: readonly Row[], count: number): Solved {
  const scale = Array.from({ length: count }, (_, i) => {
    const sum = rows.reduce(
      (total, { weights, u }) => total + (itemAt(weights, i) / u) * (itemAt(weights, i) / u),
      0,
    );
    assert(sum > 0, 'every unknown has a reading or a belief');
    return 1 / Math.sqrt(sum);
  });
  const left: number[][] = scale.map((si, i) => {
    const normal = scale.map((sj, j) =>
      rows.reduce(
        (sum, { weights, u }) => sum + (itemAt(weights, i) * itemAt(weights, j) * si * sj) / (u * u),
        0,
      ),
    );
    return [...normal, ...scale.map((_, j) => (i === j ? 1 : 0))];
  });
  eliminate(left, count);
  const covariance = scale.map((si, i) => scale.map((sj, j) => itemAt(itemAt(left, i), count + j) * si * sj));
  const right = scale.map((_, i) =>
    rows.reduce((sum, { weights, value, u }) => sum + (itemAt(weights, i) * value) / (u * u), 0),
  );
  return { solution: covariance.map((line) => dotted(line, right)), covariance };
}

function eliminate(left: number[][], count: number): void {
  for (let i = 0; i < count; i++) {
    let best = i;
    for (let k = i + 1; k < count; k++) {
      if (Math.abs(itemAt(itemAt(left, k), i)) > Math.abs(itemAt(itemAt(left, best), i))) best = k;
    }
    const pivot = itemAt(left, best);
    left[best] = itemAt(left, i);
    const by = itemAt(pivot, i);
    assert(Math.abs(by) > 0, 'the readings determine every unknown');
    left[i] = pivot.map((each) => each / by);
    for (let k = 0; k < count; k++) {
      const factor = itemAt(itemAt(left, k), i);
      if (k === i || factor === 0) continue;
      left[k] = itemAt(left, k).map((each, j) => each - factor * itemAt(itemAt(left, i), j));
    }
  }
}

function dotted(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += itemAt(a, i) * itemAt(b, i);
  return sum;
}

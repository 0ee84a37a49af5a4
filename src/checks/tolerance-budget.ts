/**
 * What may go wrong with each floor against what is asked of it (M6.1 to M6.4): the sheet where a final thickness is asked, the
 * rate, the timing, the level chosen; run by the clock, and gauged and corrected on the way. Floors of one level and one tolerance are one
 * budget. Depths and deviations in mm.
 */

import { ROUNDING } from '#geometry/tolerances.ts';
import type { BudgetRecord, BudgetSide, BudgetSum } from '#job/formats/plan-file.ts';
import type { Job } from '#job/job.ts';
import { ASSUMED_GAUGE_NOISE, GAUGED_AT } from '#job/process-assumptions.ts';
import { hypot } from '#maths/hypot.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';
import { GAUGED_TIMES } from './making-limits.ts';

/** As plan.json records it, but for both sides of the remedy. */
export interface ToleranceBudget extends Omit<BudgetRecord, 'remedy'> {
  /** What helps most, one after the other, until the floor is held or nothing helps any more; and how it then stands. */
  readonly remedy: { readonly changes: readonly BudgetChange[]; readonly sum: BudgetSum };
}

const CHANGES = ['gauge-run', 'measure-sheet', 'halve-spread', 'halve-timing', 'finer-levels'] as const;
export type BudgetChange = (typeof CHANGES)[number];

type Figures = Pick<Job, 'stock' | 'process'>;
type Clocked = Pick<Job['process'], 'rate' | 'rateSpread' | 'timing'>;

/** In the order of the stages; land has no budget, nor has what is cut out: that it comes through is judged by itself (M9.4). */
export function toleranceBudgets(plan: EtchPlan, job: Figures): ToleranceBudget[] {
  return floorsOf(plan, job).map((floor) => {
    const { regions, level, asked } = floor;
    return {
      regions,
      level,
      asked,
      byClock: summed(floor, NONE),
      gauged: summed(floor, new Set<BudgetChange>(['gauge-run'])),
      remedy: remedyFor(floor),
    };
  });
}

/** By how much the root-sum-square, or the worst case, passes what is asked on the worse side; below 0 where it holds. */
export function overBy(sum: BudgetSum, what: 'likely' | 'worst'): number {
  return Math.max(...[sum.tooDeep, sum.tooShallow].map((side) => side[what] - side.allowed));
}

/** The side that stands worse. */
export function worseSide({
  tooDeep,
  tooShallow,
}: Pick<BudgetSum, 'tooDeep' | 'tooShallow'>): 'tooDeep' | 'tooShallow' {
  const over = ({ likely, allowed }: BudgetSide) => likely - allowed;
  return over(tooShallow) > over(tooDeep) ? 'tooShallow' : 'tooDeep';
}

interface Floor extends Pick<BudgetRecord, 'regions' | 'level' | 'asked'> {
  /** What its own stage and each later one etch. */
  readonly etches: readonly number[];
  /** Of what the sheet is off: less than all where both faces share a thickness (M9.3). */
  readonly sheetShare: number;
  readonly job: Figures;
}

type Changes = ReadonlySet<BudgetChange>;

const NONE: Changes = new Set();
/** A change that gains less is not worth its trouble, mm. */
const LEAST_DEPTH_GAIN = 5e-4;
/** How far a reading may be off, mm: twice its standard deviation; and at worst five times, one in 1.7 million by chance. */
const READING = 2 * ASSUMED_GAUGE_NOISE.value;
const READING_AT_WORST = 5 * ASSUMED_GAUGE_NOISE.value;
const READING_MEAN_AT_WORST = READING_AT_WORST / Math.sqrt(GAUGED_TIMES.value);
/** What the readings of a stage leave of it, mm: carried on by the minutes that are calculated from them. */
const CARRIED_ON = READING / Math.sqrt(GAUGED_TIMES.value) / GAUGED_AT.value;

function floorsOf({ regions, stages, masking }: EtchPlan, job: Figures): Floor[] {
  return stages.flatMap(({ level }, index) => {
    // Re-masked, a floor is bare from the first stage to its own; on one coat from its own to the last.
    const baths = masking === 're-mask' ? stages.slice(0, index + 1) : stages.slice(index);
    const etches = baths.map(({ etch }) => etch);
    const floors = new Map<string, Floor & { readonly regions: string[] }>();
    for (const region of regions) {
      if (Math.abs(region.level - level) > ROUNDING || region.asked.wall !== undefined) continue;
      const asked = floorAsked(region);
      const sheetShare = shareOfSheet(region);
      const key = [asked.what, asked.plus, asked.minus, sheetShare].join(' ');
      const known = floors.get(key);
      const ids = known?.regions ?? [];
      ids.push(region.id);
      floors.set(key, {
        regions: ids,
        level,
        asked: {
          ...asked,
          low: Math.min(asked.low, known?.asked.low ?? asked.low),
          high: Math.max(asked.high, known?.asked.high ?? asked.high),
        },
        etches,
        sheetShare,
        job,
      });
    }
    return [...floors.values()];
  });
}

/** As its tolerance: in proportion to what the face takes of the metal. */
function shareOfSheet({ asked: { depth, behind = 0 } }: PlannedRegion): number {
  return behind === 0 ? 1 : depth / (depth + behind);
}

function floorAsked({ asked, taper }: PlannedRegion): Floor['asked'] {
  const { depth, plus, minus, asThickness } = asked;
  const { low, high, ...either } = taper ?? { low: depth, high: depth, plus, minus };
  return {
    what: asThickness === true ? 'thickness' : 'depth',
    low,
    high,
    plus: either.plus,
    minus: either.minus,
  };
}

/** Half-widths, ±, mm. */
interface Spreads {
  readonly sheet: readonly number[];
  readonly rate: readonly number[];
  readonly timing: readonly number[];
  readonly gauge: readonly number[];
  /** What the sheet is thicker than nominal in the middle of its tolerance. */
  readonly sheetShift: number;
  /** What all together come to at worst. */
  readonly worst: number;
}

/**
 * Half-widths of the parts that are independent of each other. By the clock (M6.2) there is one rate for the whole run, and an
 * error of timing for each immersion that the floor is bare in. Gauged (M6.3) the rate of each stage is read when most of it is done;
 * what it drifts after that, and the reading itself, remain.
 */
function spreadsOf(floor: Floor, changes: Changes): Spreads {
  const { level, etches, job } = floor;
  const process = processSpread(job.process, changes);
  const { spread } = process;
  const sheet = sheetOf(floor, changes);
  const timing = etches.map(() => process.timing);
  if (!changes.has('gauge-run')) {
    const rate = level * spread;
    return { ...sheet, rate: [rate], timing, gauge: [], worst: sheet.worst + rate + total(timing) };
  }
  return {
    ...sheet,
    rate: etches.map((etch) => etch * (1 - GAUGED_AT.value) * spread),
    timing,
    // The minutes left are calculated from what the reading says of those had, and so carry its error on.
    gauge: etches.map(() => CARRIED_ON),
    worst: sheet.worst + total(etches.map((etch) => worstGauged(etch, process))),
  };
}

/** What the process lets an immersion be off by. */
interface ProcessSpread {
  /** Share, ±. */
  readonly spread: number;
  /** mm that one immersion is off by its timing, at the fastest rate. */
  readonly timing: number;
}

function processSpread({ rate, rateSpread, timing }: Clocked, changes: Changes): ProcessSpread {
  const spread = rateSpread * (changes.has('halve-spread') ? 0.5 : 1);
  return { spread, timing: rate * (1 + spread) * timing * (changes.has('halve-timing') ? 0.5 : 1) };
}

function sheetOf(
  { asked: { what }, sheetShare, job: { stock } }: Floor,
  changes: Changes,
): Pick<Spreads, 'sheet' | 'sheetShift' | 'worst'> {
  if (what === 'depth') return { sheet: [], sheetShift: 0, worst: 0 };
  const isMeasured = changes.has('measure-sheet');
  const { plus, minus } = isMeasured ? { plus: READING, minus: READING } : stock;
  const half = ((plus + minus) / 2) * sheetShare;
  const isRead = isMeasured || stock.isMeasured === true;
  return {
    sheet: [half],
    sheetShift: ((plus - minus) / 2) * sheetShare,
    worst: isRead ? Math.max(half, READING_AT_WORST) : half,
  };
}

/**
 * What a gauged stage is off at most (M6.3). It is read after a share of its minutes, which are by a rate that is off from the real one by
 * the spread either way, so that at least `least` and at most `most` is etched by then; the mean of the readings is off by
 * `reading`. One so thin that its reading says nothing runs by the clock.
 */
function worstGauged(etch: number, process: ProcessSpread): number {
  const { spread, timing } = process;
  const slow = (1 - spread) / (1 + spread);
  const least = leastAtReading(etch, process);
  const most = (GAUGED_AT.value * etch) / slow + timing;
  const reading = READING_MEAN_AT_WORST;
  if (least <= 2 * reading) return etch * spread + timing;
  const read = least - reading;
  // As many mm as the minutes left etch at the rate that was; of those had, the timing's error is carried on.
  const left = ((etch - read) * (least + timing)) / read;
  const carriedOn = (etch * reading + (etch - read) * timing) / read;
  const last = timing * (1 + spread);
  return Math.max(carriedOn + spread * left, most - etch) + last;
}

/** Whether a reading at four fifths of the stage would say nothing: then it runs by the clock (M6.3). */
export function isTooThinToGauge(etch: number, process: Clocked): boolean {
  return leastAtReading(etch, processSpread(process, NONE)) <= 2 * READING_MEAN_AT_WORST;
}

/** mm that are etched at least when the stage is gauged. */
function leastAtReading(etch: number, { spread, timing }: ProcessSpread): number {
  return (GAUGED_AT.value * etch * (1 - spread)) / (1 + spread) - timing;
}

/** How far the etch of one stage may be off, gauged before its end and corrected (M6.3), mm: root-sum-square, and at worst. */
export function gaugedEtch(
  etch: number,
  process: Clocked,
): { readonly likely: number; readonly worst: number } {
  const { spread, timing } = processSpread(process, NONE);
  const drift = etch * (1 - GAUGED_AT.value) * spread;
  return {
    likely: hypot(hypot(drift, timing), CARRIED_ON),
    worst: worstGauged(etch, { spread, timing }),
  };
}

/**
 * Half-width that a floor of such a depth needs of its tolerance beside what its level is off: two gauged stages, the whole of its etch, and a
 * sheet that may be off by a doubt. mm
 */
export function roomForRun(depth: number, process: Clocked, doubt: number): number {
  const { spread, timing } = processSpread(process, NONE);
  const drift = depth * (1 - GAUGED_AT.value) * spread;
  return hypot(hypot(drift, Math.SQRT2 * hypot(timing, CARRIED_ON)), doubt);
}

/** M6.1: a shift adds as it is; spreads add up at worst, and by their squares where they are independent. */
function summed(planned: Floor, changes: Changes): BudgetSum {
  const floor = changes.has('finer-levels') ? finer(planned) : planned;
  const { level, asked } = floor;
  const { sheet, rate, timing, gauge, sheetShift, worst } = spreadsOf(floor, changes);
  const all = [...sheet, ...rate, ...timing, ...gauge];
  const likely = Math.sqrt(all.reduce((sum, each) => sum + each * each, 0));
  const side = (shift: number, allowed: number): BudgetSide => ({
    shift,
    worst: shift + worst,
    likely: shift + likely,
    allowed,
  });
  const sides = {
    tooDeep: side(level - asked.low - sheetShift, asked.plus),
    tooShallow: side(asked.high - level + sheetShift, asked.minus),
  };
  return {
    parts: { sheet: total(sheet), rate: total(rate), timing: total(timing), gauge: total(gauge) },
    ...sides,
    share: shareOf(sides[worseSide(sides)]),
  };
}

/** Nothing is a share of nothing. */
function shareOf({ likely, allowed }: BudgetSide): number | null {
  if (allowed > 0) return Math.max(0, likely) / allowed;
  return likely <= 0 ? 0 : null;
}

function total(halves: readonly number[]): number {
  return halves.reduce((sum, each) => sum + each, 0);
}

/** Twice as many levels: each stage is two, and a level is half as far off what is asked. */
function finer(floor: Floor): Floor {
  const { level, asked, etches } = floor;
  return {
    ...floor,
    asked: { ...asked, low: (level + asked.low) / 2, high: (level + asked.high) / 2 },
    etches: etches.flatMap((etch) => [etch / 2, etch / 2]),
  };
}

/**
 * M6.4: the change that lets the root-sum-square stand best, and after it the next, until the floor is held or nothing helps any
 * more; the worst case instead, where that alone is not held. One is named even where the floor is held already.
 */
function remedyFor(floor: Floor): ToleranceBudget['remedy'] {
  const { asked, job } = floor;
  const canMeasure = asked.what === 'thickness' && job.stock.isMeasured !== true;
  const open = CHANGES.filter((change) => change !== 'measure-sheet' || canMeasure);
  const changes: BudgetChange[] = [];
  let sum = summed(floor, NONE);
  const isBarelyHeld = overBy(sum, 'likely') <= ROUNDING && overBy(sum, 'worst') > ROUNDING;
  const over = (each: BudgetSum): number => overBy(each, isBarelyHeld ? 'worst' : 'likely');
  do {
    // One made already gains nothing more.
    const choices = open.map((change) => ({ change, sum: summed(floor, new Set([...changes, change])) }));
    const best = choices.reduce((a, b) => (over(b.sum) < over(a.sum) - ROUNDING ? b : a));
    if (over(best.sum) > over(sum) - LEAST_DEPTH_GAIN) break;
    changes.push(best.change);
    sum = best.sum;
  } while (over(sum) > ROUNDING);
  return { changes, sum };
}

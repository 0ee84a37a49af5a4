/**
 * Which readings are to be asked about before they count (M7.4): each is held against what the plan, the sheet and the readings
 * that count so far say of it. Readings are taken a moment at a time, in the order of the run, so that one asked about says
 * nothing of those after it until it is confirmed. Cost: one fit a moment.
 */
import { itemAt } from '#geometry/assert.ts';
import { ASSUMED_GAUGE_NOISE } from '#job/job-defaults.ts';
import { QUESTIONED_SHARE } from '#job/questioned-share.ts';
import { type Fit, fitRates, type Reading } from './correct-fit.ts';
import type { RunPlan } from './correct-plan.ts';

export interface Question {
  /** Off what is expected by more than a quarter of the metal; from what the same floor read before; the sheet itself. */
  readonly why: 'rate' | 'repeat' | 'rose' | 'too-deep' | 'sheet';
  /** mm, of depth or thickness as it was read. */
  readonly read: number;
  readonly expected: number;
  /** mm/min from the peel to the reading, by it and as expected; undefined before the first dip. */
  readonly rate: { readonly read: number; readonly expected: number } | undefined;
  /** mm, where the figure would be right in the other unit. */
  readonly inOtherUnit: { readonly unit: 'mm' | 'in'; readonly value: number } | undefined;
}

export interface Asked {
  readonly reading: Reading;
  /** The unit that it was read in. */
  readonly unit: 'mm' | 'in';
  /** Counts whatever is asked. */
  readonly isConfirmed: boolean;
}

export interface Answered {
  /** mm that the reading was expected to say when it came. */
  readonly expected: number | undefined;
  /** mm/min from the peel to the reading; undefined before the first dip. */
  readonly rate: number | undefined;
  /** Also of a reading that is confirmed. */
  readonly question: Question | undefined;
}

/** Deviations of one gauge reading that two may lie apart before they are taken for two figures. */
const APART = 4;
const ONE = APART * ASSUMED_GAUGE_NOISE.value;
const TWO = ONE * Math.SQRT2;
/** Of the metal: how far repeats at one moment may lie apart, for a floor is not quite even (from memory). */
const UNEVEN = 0.1;

/** In the order given, which is that of the run. */
export function questionReadings(plan: RunPlan, readings: readonly Asked[]): Answered[] {
  const counting: Reading[] = [];
  const answered: Answered[] = [];
  let moment = '';
  let isConfirmedNow = false;
  let fit = fitRates(plan, counting);
  for (const { reading, unit, isConfirmed } of readings) {
    const now = `${reading.stage} ${reading.bare.to}`;
    // What was asked about and confirmed counts at once: else each repeat of it would be asked about as well.
    if (now !== moment || isConfirmedNow) fit = fitRates(plan, counting);
    moment = now;
    const known = { plan, fit, counting };
    const expected = expectedOf(reading, known);
    const question = expected === undefined ? undefined : questionOf(reading, unit, { ...known, expected });
    const rate = expected === undefined ? undefined : ratesOf(reading, { ...known, expected })?.read;
    answered.push({ expected, rate, question });
    isConfirmedNow = question !== undefined && isConfirmed;
    if (question === undefined || isConfirmed) counting.push(reading);
  }
  return answered;
}

interface Known {
  readonly plan: RunPlan;
  /** Of what counts before this moment. */
  readonly fit: Fit;
  readonly counting: readonly Reading[];
}

/** mm; undefined for a thickness where nothing is known of the sheet. */
function expectedOf({ kind, bare, region }: Reading, { plan, fit, counting }: Known): number | undefined {
  const metal = fit.sum({ removed: { ...bare, sign: 1 } }).value;
  if (kind === 'depth') return metal;
  const gauged = middle(
    counting.flatMap((each) => (each.stage < 0 && each.region === region ? [each.value] : [])),
  );
  const sheet = gauged ?? (plan.sheet && plan.sheet.thickness + (plan.sheet.plus - plan.sheet.minus) / 2);
  return sheet === undefined ? undefined : sheet - metal;
}

function questionOf(
  reading: Reading,
  unit: Asked['unit'],
  known: Known & { readonly expected: number },
): Question | undefined {
  const why = faultOf(reading, known);
  if (why === undefined) return undefined;
  const { expected } = known;
  const [other, times] = unit === 'mm' ? (['in', 25.4] as const) : (['mm', 1 / 25.4] as const);
  const value = reading.value * times;
  return {
    why,
    read: reading.value,
    expected,
    rate: ratesOf(reading, known),
    inOtherUnit: faultOf({ ...reading, value }, known) === undefined ? { unit: other, value } : undefined,
  };
}

function faultOf(
  reading: Reading,
  known: Known & { readonly expected: number },
): Question['why'] | undefined {
  const { kind, value, bare } = reading;
  const { expected, plan } = known;
  const off = Math.abs(value - expected);
  const sheet = kind === 'thickness' ? sheetDoubt(reading, known) : 0;
  const { thickness, plus } = plan.sheet ?? { thickness: Number.POSITIVE_INFINITY, plus: 0 };
  if (kind === 'thickness' && value > thickness + plus + ONE) return 'sheet';
  if (reading.stage < 0) return off > sheet + ONE ? 'sheet' : undefined;
  const metal = known.fit.sum({ removed: { ...bare, sign: 1 } }).value;
  const byFloor = faultBeside(reading, known);
  if (byFloor !== undefined) return byFloor;
  return off > Math.max(QUESTIONED_SHARE * metal, ONE) + sheet ? 'rate' : undefined;
}

/** What one floor read before says: at this moment the same, at an earlier one less. */
function faultBeside(
  { kind, region, value, bare }: Reading,
  { fit, counting }: Known,
): Question['why'] | undefined {
  const beside = counting.filter(
    (each) => each.stage >= 0 && each.kind === kind && each.region === region && each.bare.from === bare.from,
  );
  const last = Math.max(...beside.map((each) => each.bare.to));
  const before = middle(beside.flatMap((each) => (each.bare.to === last ? [each.value] : [])));
  if (before === undefined) return undefined;
  const since = kind === 'depth' ? value - before : before - value;
  if (last === bare.to) {
    const metal = fit.sum({ removed: { ...bare, sign: 1 } }).value;
    return Math.abs(since) > Math.max(TWO, UNEVEN * metal) ? 'repeat' : undefined;
  }
  const metal = fit.sum({ removed: { from: last, to: bare.to, sign: 1 } }).value;
  if (since < -TWO) return 'rose';
  return since > (1 + QUESTIONED_SHARE) * metal + TWO ? 'too-deep' : undefined;
}

/** mm that the sheet there may be off what it was taken as. */
function sheetDoubt({ region }: Reading, { plan, counting }: Known): number {
  const isGauged = counting.some((each) => each.stage < 0 && each.region === region);
  if (isGauged) return ONE;
  return plan.sheet === undefined ? Number.POSITIVE_INFINITY : (plan.sheet.plus + plan.sheet.minus) / 2;
}

function ratesOf(
  { kind, value, bare, stage }: Reading,
  { fit, expected }: Known & { readonly expected: number },
): Question['rate'] {
  const minutes = bare.to - bare.from;
  if (stage < 0 || minutes <= 0) return undefined;
  const metal = fit.sum({ removed: { ...bare, sign: 1 } }).value;
  const read = kind === 'depth' ? value : metal + expected - value;
  return { read: read / minutes, expected: metal / minutes };
}

/** The median; of an even count the mean of the middle two; undefined of none. */
function middle(values: readonly number[]): number | undefined {
  if (values.length === 0) return undefined;
  const sorted = [...values].sort((a, b) => a - b);
  return (itemAt(sorted, (sorted.length - 1) >> 1) + itemAt(sorted, sorted.length >> 1)) / 2;
}

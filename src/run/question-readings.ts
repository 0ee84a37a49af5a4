/**
 * Which readings are to be asked about before they count (M7.4): each is held against what the plan, the sheet and the readings
 * that count so far say of it. Readings are taken a moment at a time, in the order of the run, so that one asked about says
 * nothing of later ones until it is confirmed; those of one moment are held against each other whatever order they came in. Cost: two
 * fits a moment at most.
 */
import { SAME_SUM } from '#geometry/tolerances.ts';
import { GAUGE_OFF, QUESTIONED_SHARE } from '#job/questioned-share.ts';
import { median, middleTwo } from '#maths/median.ts';
import { type Fit, fitRates, type Reading, spellsOf } from './correct-fit.ts';
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

/** mm that two readings may lie apart before they are taken for two figures. */
const TWO = GAUGE_OFF * Math.SQRT2;
/** Of the metal: how far repeats at one moment may lie apart, for a floor is not quite even (from memory). */
const UNEVEN = 0.1;

/** In the order given; what comes of a reading does not depend on it. */
export function questionReadings(plan: RunPlan, readings: readonly Asked[]): Answered[] {
  const counting: Reading[] = [];
  const answered = new Map<Asked, Answered>();
  for (const moment of momentsOf(readings)) {
    const known: Known = { plan, fit: fitRates(plan, counting), counting: [...counting] };
    for (const [asked, each] of answersAt(moment, known)) {
      answered.set(asked, each);
      if (each.question === undefined || asked.isConfirmed) counting.push(asked.reading);
    }
  }
  return readings.map(
    (each) => answered.get(each) ?? { expected: undefined, rate: undefined, question: undefined },
  );
}

/** Readings by stage and minute, in the order of the run. */
function momentsOf(readings: readonly Asked[]): Asked[][] {
  const moments: Asked[][] = [];
  const inOrder = [...readings].sort(
    ({ reading: a }, { reading: b }) => a.stage - b.stage || a.bare.to - b.bare.to,
  );
  for (const each of inOrder) {
    const moment = moments.at(-1);
    const { stage, bare } = moment?.[0]?.reading ?? {};
    if (stage === each.reading.stage && bare?.to === each.reading.bare.to) moment?.push(each);
    else moments.push([each]);
  }
  return moments;
}

/** What was asked about and confirmed counts at once: else each repeat of it would be asked about as well. */
function answersAt(moment: readonly Asked[], known: Known): Map<Asked, Answered> {
  const byEarlier = new Map(moment.map((each) => [each, judged(each, known)]));
  const settled = moment.filter((each) => each.isConfirmed && byEarlier.get(each)?.question !== undefined);
  const besides = [...known.counting, ...settled.map(({ reading }) => reading)];
  const also: Known = { ...known, fit: settled.length > 0 ? fitRates(known.plan, besides) : known.fit };
  const alone = new Map(
    moment.map((each) => {
      const first = byEarlier.get(each) ?? judged(each, known);
      if (first.question === undefined || settled.length === 0 || settled.includes(each))
        return [each, first];
      const second = judged(each, also);
      return [each, second.question === undefined ? second : first];
    }),
  );
  const isDoubted = (each: Asked) => alone.get(each)?.question !== undefined;
  for (const floor of floorsOf(moment)) {
    for (const [each, beside] of oddOnes(floor, { known, isDoubted })) {
      if (!isDoubted(each)) alone.set(each, judged(each, known, beside));
    }
  }
  return alone;
}

/** `beside`: mm that readings of the same floor at the same moment give, from which it stands apart. */
function judged({ reading, unit }: Asked, known: Known, beside?: number): Answered {
  const expected = expectedOf(reading, known);
  const from = expected ?? beside;
  if (from === undefined) return { expected, rate: undefined, question: undefined };
  const given = { ...known, expected: from };
  const why = beside === undefined ? faultOf(reading, given) : reading.stage < 0 ? 'sheet' : 'repeat';
  const question = why === undefined ? undefined : questionOf(reading, unit, { ...given, why });
  return {
    expected,
    rate: expected === undefined ? undefined : ratesOf(reading, given)?.read,
    question: question && { ...question, expected: beside ?? from },
  };
}

/** Readings of one kind of one floor at one moment. */
function floorsOf(moment: readonly Asked[]): Asked[][] {
  const floors = new Map<string, Asked[]>();
  for (const each of moment) {
    const { kind, region, bare, behind } = each.reading;
    const key = `${kind} ${bare.from} ${region} ${behind?.region ?? ''}`;
    floors.set(key, [...(floors.get(key) ?? []), each]);
  }
  return [...floors.values()];
}

interface Beside {
  readonly known: Known;
  readonly isDoubted: (each: Asked) => boolean;
}

/**
 * Readings of one floor at one moment that stand apart from the middle of those that fit the run or are confirmed, each with that
 * middle. Two halves that disagree are told apart by what is confirmed, else by what was expected; where neither tells, all of them are
 * asked about.
 */
function oddOnes(floor: readonly Asked[], { known, isDoubted }: Beside): [Asked, number][] {
  const first = floor[0];
  if (first === undefined || floor.length < 2) return [];
  const held = floor.filter((each) => each.isConfirmed || !isDoubted(each)).map(figureRead);
  const apart = apartAt(first.reading, known);
  const expected = expectedOf(first.reading, known);
  const sure = median(floor.filter(({ isConfirmed }) => isConfirmed).map(figureRead)) ?? expected;
  return floor.flatMap((each): [Asked, number][] => {
    const two = middleNear(held, { apart, near: each.isConfirmed ? expected : sure });
    if (two === undefined) return [];
    const [low, high] = two;
    const value = figureRead(each);
    return Math.max(high - value, value - low) > apart ? [[each, (low + high) / 2]] : [];
  });
}

function figureRead({ reading }: Asked): number {
  return reading.value;
}

interface Halves {
  readonly apart: number;
  readonly near: number | undefined;
}

/** The middle two, which may be one; where they are apart, twice the nearer one; undefined of none. */
function middleNear(
  values: readonly number[],
  { apart, near }: Halves,
): readonly [number, number] | undefined {
  const two = middleTwo(values);
  if (two === undefined) return undefined;
  const [low, high] = two;
  const nearer = near === undefined ? 0 : Math.abs(high - near) - Math.abs(low - near);
  if (high - low <= apart || Math.abs(nearer) < SAME_SUM) return [low, high];
  return nearer > 0 ? [low, low] : [high, high];
}

/** mm that readings of one floor at one moment may lie apart. */
function apartAt(reading: Reading, { fit }: Known): number {
  if (reading.stage < 0) return 2 * GAUGE_OFF;
  return Math.max(TWO, UNEVEN * metalGone(reading, fit));
}

/** mm that the fit takes where a reading was taken, of both faces where both are etched there. */
function metalGone(reading: Reading, fit: Fit): number {
  return fit.sum({ removed: { spells: spellsOf(reading), sign: 1 } }).value;
}

interface Known {
  readonly plan: RunPlan;
  /** Of what counts before this moment, and of what is confirmed at it. */
  readonly fit: Fit;
  /** Of earlier moments. */
  readonly counting: readonly Reading[];
}

/** mm; undefined for a thickness where nothing is known of the sheet. */
function expectedOf(reading: Reading, { plan, fit, counting }: Known): number | undefined {
  const { kind, region } = reading;
  const metal = metalGone(reading, fit);
  if (kind === 'depth') return metal;
  const gauged = median(
    counting.flatMap((each) => (each.stage < 0 && each.region === region ? [each.value] : [])),
  );
  const sheet = gauged ?? (plan.sheet && plan.sheet.thickness + (plan.sheet.plus - plan.sheet.minus) / 2);
  return sheet === undefined ? undefined : sheet - metal;
}

function questionOf(
  reading: Reading,
  unit: Asked['unit'],
  known: Known & { readonly expected: number; readonly why: Question['why'] },
): Question {
  const { expected, why } = known;
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
  const { kind, value } = reading;
  const { expected, plan } = known;
  const off = Math.abs(value - expected);
  const sheet = kind === 'thickness' ? sheetDoubt(reading, known) : 0;
  const { thickness, plus } = plan.sheet ?? { thickness: Number.POSITIVE_INFINITY, plus: 0 };
  if (kind === 'thickness' && value > thickness + plus + GAUGE_OFF) return 'sheet';
  if (reading.stage < 0) return off > sheet + GAUGE_OFF ? 'sheet' : undefined;
  const metal = metalGone(reading, known.fit);
  const byFloor = faultBeside(reading, known);
  if (byFloor !== undefined) return byFloor;
  return off > Math.max(QUESTIONED_SHARE * metal, GAUGE_OFF) + sheet ? 'rate' : undefined;
}

/** What one floor read at an earlier moment: less metal gone. */
function faultBeside(reading: Reading, { fit, counting }: Known): Question['why'] | undefined {
  const { kind, region, value, bare, behind } = reading;
  const beside = counting.filter(
    (each) =>
      each.stage >= 0 &&
      each.kind === kind &&
      each.region === region &&
      each.bare.from === bare.from &&
      each.behind?.region === behind?.region,
  );
  const last = Math.max(...beside.map((each) => each.bare.to));
  const lastOnes = beside.filter((each) => each.bare.to === last);
  const before = median(lastOnes.map((each) => each.value));
  const [earlier] = lastOnes;
  if (before === undefined || earlier === undefined) return undefined;
  const since = kind === 'depth' ? value - before : before - value;
  const metal = metalGone(reading, fit) - metalGone(earlier, fit);
  if (since < -TWO) return 'rose';
  return since > (1 + QUESTIONED_SHARE) * metal + TWO ? 'too-deep' : undefined;
}

/** mm that the sheet there may be off what it was taken as. */
function sheetDoubt({ region }: Reading, { plan, counting }: Known): number {
  const isGauged = counting.some((each) => each.stage < 0 && each.region === region);
  if (isGauged) return GAUGE_OFF;
  return plan.sheet === undefined ? Number.POSITIVE_INFINITY : (plan.sheet.plus + plan.sheet.minus) / 2;
}

function ratesOf(
  reading: Reading,
  { fit, expected }: Known & { readonly expected: number },
): Question['rate'] {
  const { kind, value, stage } = reading;
  const minutes = spellsOf(reading).reduce((sum, { from, to }) => sum + to - from, 0);
  if (stage < 0 || minutes <= 0) return undefined;
  const metal = metalGone(reading, fit);
  const read = kind === 'depth' ? value : metal + expected - value;
  return { read: read / minutes, expected: metal / minutes };
}

/**
 * Figures as the papers print them, in the unit chosen or in both. A limit is rounded inward, and a tolerance down, so that what holds the
 * printed figure holds what is required; decimals follow the tolerance, and inches have four at most, as gauges read them.
 */
import { SAME_COUNT, SAME_SUM } from '#geometry/tolerances.ts';
import type { HandoffChoices } from '#job/resolve/resolve-handoff.ts';
import { millimetresIn } from '#units/length-unit.ts';

export type PaperUnit = 'mm' | 'in';

export interface PaperFigures {
  /** Of the job. */
  readonly job: PaperUnit;
  readonly units: OneAUnit<PaperUnit>;
  /** `mm`, or `mm and in`. */
  readonly named: string;
  /** One a unit. */
  readonly lengths: (millimetres: number, how?: LengthLook) => OneAUnit;
  /** The same, a line a unit. */
  readonly length: (millimetres: number, how?: LengthLook) => string;
  /** The same with its unit, beside each other. */
  readonly said: (millimetres: number, how?: LengthLook) => string;
  /** What is allowed either way, one a unit: as given where that has so many places, never more than it is. */
  readonly tolerances: (millimetres: number) => OneAUnit;
  /** The same with its unit, beside each other. */
  readonly toleranceSaid: (millimetres: number) => string;
  /** With its unit, beside each other. */
  readonly rate: (perMinute: number, round?: Rounding) => string;
}

/** In a sentence, where `in` would read as the preposition. */
export const UNIT_WORDS: Readonly<Record<PaperUnit, string>> = { mm: 'mm', in: 'inches' };

/** The first is in the job's unit, where both are chosen. */
export type OneAUnit<Value = string> = readonly [Value, ...Value[]];

export type Rounding = 'nearest' | 'up' | 'down';

interface LengthLook {
  /** A least limit goes up, a most limit down. */
  readonly round?: Rounding;
  /** mm that it may be off: fewer places serve a wider one. */
  readonly tolerance?: number;
  /** Out of the job, or as good: a thousandth of a millimetre that it was given to is printed. */
  readonly isGiven?: boolean;
}

/** mm; below it a further place is printed: rounding inward then costs a quarter of a tolerance at most. */
const FINE = 0.04;
const COARSE = 0.4;
/** mm that a length may be off where nobody says. */
const USUAL = 0.08;
/** Of a tolerance, which is printed to as many places as it has between these. */
const TOLERANCE_PLACES = { mm: { least: 2, most: 3 }, in: { least: 4, most: 4 } } as const;

export function paperFigures(asked: HandoffChoices['units'], job: PaperUnit): PaperFigures {
  const other = job === 'mm' ? 'in' : 'mm';
  const units: OneAUnit<PaperUnit> = asked === 'both' ? [job, other] : [asked === 'job' ? job : asked];
  const lengthIn = (unit: PaperUnit, value: number, { round = 'nearest', ...look }: LengthLook) =>
    figure(value / millimetresIn(unit), lengthPlaces(unit, value, look), round);
  const lengths = (value: number, how: LengthLook = {}) =>
    eachOf(units, (unit) => lengthIn(unit, value, how));
  const toleranceIn = (unit: PaperUnit, value: number) => {
    const { least, most } = TOLERANCE_PLACES[unit];
    const inUnit = value / millimetresIn(unit);
    const [fewest, all] = [least, most].map((places) => figure(inUnit, places, 'down'));
    return Number(fewest) === Number(all) ? String(fewest) : String(all);
  };
  return {
    job,
    units,
    named: units.join(' and '),
    lengths,
    length: (value, how) => lengths(value, how).join('\n'),
    said: (value, how = {}) => units.map((unit) => `${lengthIn(unit, value, how)} ${unit}`).join(', '),
    tolerances: (value) => eachOf(units, (unit) => toleranceIn(unit, value)),
    toleranceSaid: (value) => units.map((unit) => `${toleranceIn(unit, value)} ${unit}`).join(', '),
    rate: (value, round = 'nearest') =>
      units
        .map((unit) => `${figure(value / millimetresIn(unit), unit === 'mm' ? 4 : 5, round)} ${unit}/min`)
        .join(', '),
  };
}

/** A length of whole millimetres on paper, to lay a rule against: with its inches where the papers have them. */
export function inBoth(millimetres: number, figures: Pick<PaperFigures, 'units'>): string {
  const [first, inches] = eachUnit(millimetres, figures);
  return inches === undefined ? first : `${first} (${inches})`;
}

/** The same, one by one. */
export function eachUnit(millimetres: number, { units }: Pick<PaperFigures, 'units'>): OneAUnit {
  const inches = `${(millimetres / millimetresIn('in')).toFixed(3)} in`;
  return [`${millimetres} mm`, ...(units.includes('in') ? [inches] : [])];
}

function eachOf<Value, Result>(
  [first, ...others]: OneAUnit<Value>,
  write: (value: Value) => Result,
): OneAUnit<Result> {
  return [write(first), ...others.map(write)];
}

function lengthPlaces(unit: PaperUnit, value: number, { tolerance = USUAL, isGiven = false }: LengthLook) {
  const isFine = tolerance < FINE || (isGiven && isWhole(value * 1000) && !isWhole(value * 100));
  const places = isFine ? 3 : tolerance < COARSE ? 2 : 1;
  return unit === 'mm' ? places : Math.min(4, places + 2);
}

function isWhole(steps: number): boolean {
  return Math.abs(steps - Math.round(steps)) < SAME_COUNT;
}

function figure(value: number, places: number, round: Rounding): string {
  const scale = Number(`1e${places}`);
  const steps = value * scale;
  const whole = {
    nearest: Math.round(steps),
    up: Math.ceil(steps - SAME_SUM * scale),
    down: Math.floor(steps + SAME_SUM * scale),
  }[round];
  return (whole / scale + 0).toFixed(places);
}

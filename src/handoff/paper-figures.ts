/**
 * Figures as the papers print them, in the unit chosen or in both. A limit is rounded inward, so that what holds the printed figure holds
 * the limit; decimals follow the tolerance.
 */
import { SAME_SUM } from '#geometry/tolerances.ts';
import type { HandoffChoices } from '#job/resolve/resolve-handoff.ts';
import { millimetresIn } from '#units/length-unit.ts';

export type PaperUnit = 'mm' | 'in';

export interface PaperFigures {
  readonly units: OneAUnit<PaperUnit>;
  /** `mm`, or `mm and in`. */
  readonly named: string;
  /** One a unit. */
  readonly lengths: (millimetres: number, how?: LengthLook) => OneAUnit;
  /** The same, a line a unit. */
  readonly length: (millimetres: number, how?: LengthLook) => string;
  /** The same with its unit, beside each other. */
  readonly said: (millimetres: number, how?: LengthLook) => string;
  /** With its unit, beside each other. */
  readonly rate: (perMinute: number, round?: Rounding) => string;
}

/** The first is in the job's unit, where both are chosen. */
export type OneAUnit<Value = string> = readonly [Value, ...Value[]];

export type Rounding = 'nearest' | 'up' | 'down';

interface LengthLook {
  /** A least limit goes up, a most limit down. */
  readonly round?: Rounding;
  /** mm that it may be off: fewer places serve a wider one. */
  readonly tolerance?: number;
}

/** mm; below it a further place is printed. */
const FINE = 0.02;
const COARSE = 0.15;

export function paperFigures(asked: HandoffChoices['units'], job: PaperUnit): PaperFigures {
  const other = job === 'mm' ? 'in' : 'mm';
  const units: OneAUnit<PaperUnit> = asked === 'both' ? [job, other] : [asked === 'job' ? job : asked];
  const lengthIn = (unit: PaperUnit, value: number, { round = 'nearest', tolerance = 0.08 }: LengthLook) =>
    figure(value / millimetresIn(unit), lengthPlaces(unit, tolerance), round);
  const lengths = (value: number, how: LengthLook = {}) =>
    eachOf(units, (unit) => lengthIn(unit, value, how));
  return {
    units,
    named: units.join(' and '),
    lengths,
    length: (value, how) => lengths(value, how).join('\n'),
    said: (value, how = {}) => units.map((unit) => `${lengthIn(unit, value, how)} ${unit}`).join(', '),
    rate: (value, round = 'nearest') =>
      units
        .map((unit) => `${figure(value / millimetresIn(unit), unit === 'mm' ? 4 : 5, round)} ${unit}/min`)
        .join(', '),
  };
}

function eachOf<Value, Result>(
  [first, ...others]: OneAUnit<Value>,
  write: (value: Value) => Result,
): OneAUnit<Result> {
  return [write(first), ...others.map(write)];
}

function lengthPlaces(unit: PaperUnit, tolerance: number): number {
  const places = tolerance < FINE ? 3 : tolerance < COARSE ? 2 : 1;
  return unit === 'mm' ? places : places + 2;
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

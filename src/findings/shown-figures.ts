/**
 * Lengths, rates and names of findings as their sentences are made, in the unit and the words that they are read in. In millimetres each subject
 * writes its figures to the places that it knows; inches have four, and two digits at least.
 */
import { powerOfTen } from '#maths/decade.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { ShownUnit } from '#units/show-length.ts';

/** A figure of millimetres in digits. */
export type WriteFigure = (millimetres: number) => string;

/** How words name what a job file or a command line says. */
export interface Naming {
  /** A field of the job, by its path; and how the file's own words say it, where that is shorter. */
  readonly field: (path: string, asWritten?: string) => string;
  /** What stands letter for letter in a file or at the terminal. */
  readonly code: (text: string) => string;
}

export interface Shown extends Naming {
  readonly unit: ShownUnit;
  /** A length with its unit, or both figures of a place. */
  readonly length: (millimetres: number | readonly [number, number], write: WriteFigure) => string;
  /** A rate or speed, mm/min, with its unit; with a word between two. */
  readonly rate: (
    perMinute: number | readonly [number, number],
    write: WriteFigure,
    between?: 'to' | '±',
  ) => string;
}

/** Decimals at most, without zeros at the end. */
export function figureTo(decimals: number): WriteFigure {
  return (value) => String(Number(value.toFixed(decimals)));
}

/** Writes lengths with their unit, in figures of one form. */
export function lengthWriter(write: WriteFigure): (millimetres: number, show: Shown) => string {
  return (millimetres, show) => show.length(millimetres, write);
}

/** To a micrometre, as gauges are read. */
export const mm = lengthWriter(figureTo(3));

/** Significant digits of a rate: those that coupons give. */
const RATE_DIGITS = 4;
/** Places of an inch, and digits of a length that they would lose. */
const PLACES = 4;
const LEAST_DIGITS = 2;

/** As whoever writes the job file reads it. */
const AS_WRITTEN: Naming = { field: (path, asWritten = path) => asWritten, code: (text) => `\`${text}\`` };

export function shownIn(unit: ShownUnit, naming = AS_WRITTEN): Shown {
  const inUnit = (write: WriteFigure, inches: WriteFigure) => (unit === 'mm' ? write : inches);
  return {
    ...naming,
    unit,
    length: (value, write) => `${[value].flat().map(inUnit(write, inchFigure)).join(', ')} ${unit}`,
    rate: (value, write, between = 'to') =>
      `${[value].flat().map(inUnit(write, inchRate)).join(` ${between} `)} ${unit}/min`,
  };
}

function inchRate(millimetres: number): string {
  return String(Number((millimetres / millimetresIn('in')).toPrecision(RATE_DIGITS)));
}

function inchFigure(millimetres: number): string {
  const inches = millimetres / millimetresIn('in');
  const places = Number(inches.toFixed(PLACES));
  return String(
    Math.abs(places) < powerOfTen(LEAST_DIGITS - 1 - PLACES)
      ? Number(inches.toPrecision(LEAST_DIGITS))
      : places,
  );
}

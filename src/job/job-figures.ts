/** Figures of a job on their way to millimetres, and the record of where each came from. */
import type { Provenance, Sourced } from '#bath/provenance.ts';
import type { Point } from '#geometry/point.ts';
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import { toMillionth } from '#units/round-figures.ts';

/**
 * Millimetres of a length in the job's units, rounded to a millionth, so that 4.06 − 1.6 and 2.46, or 0.1 in and 2.54 mm, are one
 * level and not two that differ in the sixteenth digit.
 */
export function jobMillimetres(length: number, unit: LengthUnit): number {
  return toMillionth(length * millimetresIn(unit));
}

/** A length in the job's units of so many millimetres. */
export function jobLength(millimetres: number, unit: LengthUnit): number {
  return Number((millimetres / millimetresIn(unit)).toPrecision(12));
}

/** Millimetres of a point in drawing coordinates. */
export function drawnPoint([x, y]: readonly [number, number], unit: LengthUnit): Point {
  return { x: x * millimetresIn(unit), y: y * millimetresIn(unit) };
}

/** A figure that the engineer gave, by its path in the job file. */
export function givenFigure(value: number, path: string): Sourced {
  return { value, source: `job file, ${path}`, kind: 'user' };
}

export function provenanceOf(quantity: string, unit: string, figure: Sourced): Provenance {
  const { value, source, kind, plusMinus } = figure;
  return { quantity, value, unit, source, kind, ...(plusMinus === undefined ? {} : { plusMinus }) };
}

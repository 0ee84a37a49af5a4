/**
 * The sheet as it was measured (M6.1): readings against what the nominal sheet, flat or tapered, has at their places. Their mean
 * moves the sheet; its minus and plus are how far single readings stand from that mean, and no less than one reading may be off.
 */
import type { Point } from '#geometry/point.ts';
import { toMillionth } from '#units/round-figures.ts';
import { ASSUMED_GAUGE_NOISE } from './process-assumptions.ts';
import { sheetAt } from './sheet-at.ts';
import type { Taper } from './taper.ts';

export interface SheetReading {
  /** Needed of a tapered sheet. */
  readonly at: Point | undefined;
  readonly thickness: number;
}

export interface MeasuredSheet {
  readonly thickness: number | Taper;
  readonly minus: number;
  readonly plus: number;
}

/** How far a reading may be off, mm: twice its standard deviation. */
const READING_LIMIT = 2 * ASSUMED_GAUGE_NOISE.value;

/** @param readings at least one */
export function measuredSheet(nominal: number | Taper, readings: readonly SheetReading[]): MeasuredSheet {
  const off = readings.map(({ at, thickness }) => thickness - sheetAt(nominal, at ?? { x: 0, y: 0 }));
  const mean = off.reduce((sum, each) => sum + each, 0) / off.length;
  const moved = (value: number) => toMillionth(value + mean);
  return {
    thickness:
      typeof nominal === 'number'
        ? moved(nominal)
        : { ...nominal, fromValue: moved(nominal.fromValue), toValue: moved(nominal.toValue) },
    minus: toMillionth(Math.max(READING_LIMIT, mean - Math.min(...off))),
    plus: toMillionth(Math.max(READING_LIMIT, Math.max(...off) - mean)),
  };
}

/** Of a flat sheet's readings, in the unit that they are in. */
export function meanReading(
  measured: readonly (number | { readonly thickness: number })[] | undefined,
): number | undefined {
  if (measured === undefined || measured.length === 0) return undefined;
  const sum = measured.reduce<number>(
    (total, each) => total + (typeof each === 'number' ? each : each.thickness),
    0,
  );
  return sum / measured.length;
}

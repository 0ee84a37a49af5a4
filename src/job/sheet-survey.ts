/**
 * The sheet's thickness from place to place, as readings show it (M8.1): constant, plane or quadratic by least squares, whichever predicts
 * readings best that it has not seen. Coordinates are taken about the middle of the readings and scaled to their extent, so that the
 * normal equations are well-conditioned. mm
 */
import { itemAt } from '#geometry/assert.ts';
import { boxOfPoints } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { hypot } from '#maths/hypot.ts';
import { toMillionth } from '#units/round-figures.ts';
import { ASSUMED_GAUGE_NOISE } from './process-assumptions.ts';

export interface SurveyReading {
  readonly at: Point;
  readonly thickness: number;
}

export const SURVEY_MODELS = ['constant', 'plane', 'quadratic'] as const;
export type SurveyModel = (typeof SURVEY_MODELS)[number];

/** Thickness is the sum of terms times 1, u, v, u², uv, v²; u and v are x and y from `about`, over `scale`. */
export interface SurveySurface {
  readonly model: SurveyModel;
  readonly about: Point;
  readonly scale: number;
  readonly terms: readonly number[];
}

export interface SurveyFit extends SurveySurface {
  /** Root mean square by which readings left out are missed. */
  readonly sigma: number;
  /** (XᵀX)⁻¹, row by row. */
  readonly inverse: readonly (readonly number[])[];
  /** Of a constant, ±: how far readings stand from their mean, as of any measured sheet (M6.1). */
  readonly spread?: number;
}

export interface SheetSurvey extends SurveyFit {
  readonly readings: readonly SurveyReading[];
  /** Of all models that so many readings allow, the simplest first. */
  readonly tried: readonly SurveyFit[];
  /** Where readings that differ allow no more than a constant: what a plane would take. */
  readonly lacks?: SurveyLack;
}

export interface SurveyLack {
  /** Readings that are missing. */
  readonly more: number;
  /** Those that there are lie in a line. */
  readonly areInLine: boolean;
}

const COEFFICIENTS: Readonly<Record<SurveyModel, number>> = { constant: 1, plane: 3, quadratic: 6 };
/** Readings for each coefficient of a model that is worth its trouble. */
const READINGS_EACH = 2;
/** How far a reading may be off, mm: twice its standard deviation. */
const READING_LIMIT = 2 * ASSUMED_GAUGE_NOISE.value;
/** Pivots less than this share of their equation's own size: the readings lie in a line, or in fewer places than it takes. */
const SINGULAR = 1e-9;

/** @param readings at least one */
export function fitSurvey(readings: readonly SurveyReading[]): SheetSurvey {
  const { minX, minY, maxX, maxY } = boxOfPoints(readings.map(({ at }) => at));
  const about = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  const scale = Math.max(maxX - minX, maxY - minY, 1) / 2;
  const tried = SURVEY_MODELS.flatMap((model) => {
    const isAllowed = model === 'constant' || readings.length >= READINGS_EACH * COEFFICIENTS[model];
    return isAllowed ? (fitModel(model, readings, { about, scale }) ?? []) : [];
  });
  const best = tried.reduce((a, b) => (b.sigma < a.sigma ? b : a));
  const constant = itemAt(tried, 0);
  // A slope or bend that leaves more open than the sheet differs at all says nothing of it.
  const { spread = 0 } = constant;
  const isWorse = doubtAmong(best, readings) > spread;
  const lacks = tried.length > 1 || spread <= READING_LIMIT ? undefined : lackOf(readings, { about, scale });
  return { ...(isWorse ? constant : best), readings, tried, ...(lacks === undefined ? {} : { lacks }) };
}

function lackOf(readings: readonly SurveyReading[], frame: Frame): SurveyLack {
  return {
    more: Math.max(0, READINGS_EACH * COEFFICIENTS.plane - readings.length),
    areInLine: fitModel('plane', readings, frame) === undefined,
  };
}

/** ±, where readings were taken. */
export function doubtAmong(fit: SurveyFit, readings: readonly SurveyReading[]): number {
  return Math.max(...readings.map(({ at }) => surveyDoubtAt(fit, at)));
}

/** Thickness that a fit gives to a place. */
export function surveyedAt({ model, about, scale, terms }: SurveySurface, at: Point): number {
  return basisAt(model, at, { about, scale }).reduce(
    (sum, each, index) => sum + each * itemAt(terms, index),
    0,
  );
}

/**
 * How far the sheet may be off its fit at a place, ±, about 95 %: what the fit misses beyond the gauge's own noise, and what readings so few
 * and so noisy leave open of the fit there; of a constant no more than readings differ from it, as of any measured sheet.
 */
export function surveyDoubtAt(
  { model, about, scale, sigma, inverse, spread = Number.POSITIVE_INFINITY }: SurveyFit,
  at: Point,
): number {
  const basis = basisAt(model, at, { about, scale });
  const noise = ASSUMED_GAUGE_NOISE.value;
  const bumps = Math.sqrt(Math.max(0, sigma * sigma - noise * noise));
  const doubt = 2 * hypot(bumps, Math.max(sigma, noise) * Math.sqrt(quadraticForm(inverse, basis)));
  return Math.min(doubt, spread);
}

interface Frame {
  readonly about: Point;
  readonly scale: number;
}

function basisAt(model: SurveyModel, { x, y }: Point, { about, scale }: Frame): number[] {
  const u = (x - about.x) / scale;
  const v = (y - about.y) / scale;
  return [1, u, v, u * u, u * v, v * v].slice(0, COEFFICIENTS[model]);
}

function fitModel(
  model: SurveyModel,
  readings: readonly SurveyReading[],
  frame: Frame,
): SurveyFit | undefined {
  const rows = readings.map(({ at }) => basisAt(model, at, frame));
  const count = COEFFICIENTS[model];
  const normal = table(count, (i, j) => total(rows, (row) => itemAt(row, i) * itemAt(row, j)));
  const inverse = inverted(normal);
  if (inverse === undefined) return undefined;
  const right = Array.from({ length: count }, (_, i) =>
    total(rows, (row, index) => itemAt(row, i) * itemAt(readings, index).thickness),
  );
  const terms = inverse.map((line) => total(line, (each, i) => each * itemAt(right, i)));
  // What a fit without one reading misses that reading by is what this one misses, over 1 less the reading's own weight.
  const offs = rows.map(
    (row, index) => itemAt(readings, index).thickness - total(row, (each, i) => each * itemAt(terms, i)),
  );
  const missed = rows.map((row, index) => {
    const off = itemAt(offs, index);
    const own = quadraticForm(inverse, row);
    return own > 1 - SINGULAR ? 0 : off / (1 - own);
  });
  const sigma = Math.sqrt(total(missed, (each) => each * each) / readings.length);
  const fit = { model, ...frame, terms, sigma, inverse };
  return model === 'constant'
    ? { ...fit, spread: toMillionth(Math.max(READING_LIMIT, ...offs.map(Math.abs))) }
    : fit;
}

function total<Item>(items: readonly Item[], of: (item: Item, index: number) => number): number {
  return items.reduce((sum, item, index) => sum + of(item, index), 0);
}

function table(count: number, of: (row: number, column: number) => number): number[][] {
  return Array.from({ length: count }, (_, i) => Array.from({ length: count }, (_each, j) => of(i, j)));
}

function quadraticForm(matrix: readonly (readonly number[])[], row: readonly number[]): number {
  return total(matrix, (line, i) => itemAt(row, i) * total(line, (each, j) => each * itemAt(row, j)));
}

/** Gauss and Jordan, with the largest pivot of each column; undefined where there is none to speak of. */
function inverted(matrix: readonly (readonly number[])[]): number[][] | undefined {
  const count = matrix.length;
  const rows = matrix.map((line, i) => [
    ...line,
    ...Array.from({ length: count }, (_, j) => (i === j ? 1 : 0)),
  ]);
  const sizes = matrix.map((line) => Math.max(...line.map(Math.abs)));
  for (let column = 0; column < count; column++) {
    let best = column;
    for (let row = column + 1; row < count; row++) {
      if (Math.abs(itemAt(itemAt(rows, row), column)) > Math.abs(itemAt(itemAt(rows, best), column)))
        best = row;
    }
    const pivotRow = itemAt(rows, best);
    rows[best] = itemAt(rows, column);
    rows[column] = pivotRow;
    const pivot = itemAt(pivotRow, column);
    if (Math.abs(pivot) <= SINGULAR * Math.max(...sizes)) return undefined;
    for (let each = 0; each < 2 * count; each++) pivotRow[each] = itemAt(pivotRow, each) / pivot;
    for (const [row, line] of rows.entries()) {
      const times = itemAt(line, column);
      if (row === column || times === 0) continue;
      for (let each = 0; each < 2 * count; each++)
        line[each] = itemAt(line, each) - times * itemAt(pivotRow, each);
    }
  }
  return rows.map((line) => line.slice(count));
}

/**
 * A finding's words with lengths and speeds in the unit on show. Words are written in millimetres, each figure with its unit
 * after it; a place, a range and a figure with its ± have two before the one unit. Areas and names of keys stay as they are.
 */
import { powerOfTen } from '#maths/decade.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { ShownUnit } from '#units/show-length.ts';
import type { Finding } from './finding.ts';
import { type SaidFinding, sayFinding } from './say-finding.ts';

/** One figure or the two of a place, then mm, but neither mm² nor mm/min. */
const LENGTHS = /-?\d[\d.]*(?:, -?\d[\d.]*)?(?=[ \u00a0]mm(?![\w²³/]| a minute))[ \u00a0]mm/g;
/** A rate or speed, or the two ends of a range, or one with its ±. */
const RATES = /-?\d[\d.]*(?: (?:to|±) -?\d[\d.]*)?(?=[ \u00a0]mm\/min)[ \u00a0]mm/g;
/** Significant digits of a rate: those that coupons give. */
const RATE_DIGITS = 4;
/** Places of an inch, and digits of a length that they would lose. */
const PLACES = 4;
const LEAST_DIGITS = 2;

export function sayInUnit(finding: Finding, unit: ShownUnit): SaidFinding {
  const said = sayFinding(finding);
  if (unit === 'mm') return said;
  return { ...said, reason: inInches(said.reason), remedy: inInches(said.remedy) };
}

function inInches(words: string): string {
  const inEach = (figures: string, write: (millimetres: number) => string): string =>
    figures.replace(/-?\d[\d.]*/g, (figure) => write(Number(figure))).replace(/mm$/, 'in');
  return words
    .replace(LENGTHS, (lengths) => inEach(lengths, inchFigure))
    .replace(RATES, (rates) => inEach(rates, inchRate));
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

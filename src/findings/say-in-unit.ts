/**
 * A finding's words with lengths in the unit on show. Words are written in millimetres, each figure with its unit after it; a
 * place has two figures before the one unit. Speeds, areas and names of keys stay as they are.
 */
import { powerOfTen } from '#maths/decade.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { ShownUnit } from '#units/show-length.ts';
import type { Finding } from './finding.ts';
import { type SaidFinding, sayFinding } from './say-finding.ts';

/** One figure or the two of a place, then mm, but neither mm² nor mm/min. */
const LENGTHS = /-?\d[\d.]*(?:, -?\d[\d.]*)?(?=[ \u00a0]mm(?![\w²³/]| a minute))[ \u00a0]mm/g;
/** Places of an inch, and digits of a length that they would lose. */
const PLACES = 4;
const LEAST_DIGITS = 2;

export function sayInUnit(finding: Finding, unit: ShownUnit): SaidFinding {
  const said = sayFinding(finding);
  if (unit === 'mm') return said;
  return { ...said, reason: inInches(said.reason), remedy: inInches(said.remedy) };
}

function inInches(words: string): string {
  return words.replace(LENGTHS, (lengths) =>
    lengths.replace(/-?\d[\d.]*/g, (figure) => inchFigure(Number(figure))).replace(/mm$/, 'in'),
  );
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

/** Figures to the thousandth of a millimetre, in the papers' units: what a reviewer compares. */
import { SAME_COUNT } from '#geometry/tolerances.ts';
import type { OneAUnit, PaperFigures } from '#handoff/paper-figures.ts';

/** mm; asks for the last place that is printed. */
const LAST_PLACE = 0.01;

export function exact(figures: PaperFigures, value: number): string {
  return exactEach(figures, value).join('\n');
}

function exactEach(figures: PaperFigures, value: number): OneAUnit {
  return figures.lengths(value, { tolerance: LAST_PLACE });
}

/** A level: hundredths of a millimetre where that is all of it. */
export function levelFigures(figures: PaperFigures, level: number): OneAUnit {
  const isWhole = Math.abs(level * 100 - Math.round(level * 100)) < SAME_COUNT;
  return isWhole ? figures.lengths(level) : exactEach(figures, level);
}

/** What is allowed: `+0.08 −0.05`, a line a unit. */
export function allowedSides({ tolerances }: PaperFigures, plus: number, minus: number): string {
  return besides(tolerances(plus), tolerances(minus));
}

/** What may come out: `+0.081 −0.052`, never less than it is. */
export function likelySides(figures: PaperFigures, plus: number, minus: number): string {
  return besides(atMost(figures, plus), atMost(figures, minus));
}

/** An error, never less than it is. */
export function atMost(figures: PaperFigures, error: number): OneAUnit {
  return figures.lengths(error, { tolerance: LAST_PLACE, round: 'up' });
}

function besides(plus: OneAUnit, minus: OneAUnit): string {
  return plus.map((value, unit) => `+${value} −${minus[unit]}`).join('\n');
}

/** `+0.060`, `−0.020`, `0`. */
export function signed(figures: PaperFigures, off: number): string {
  return exactEach(figures, Math.abs(off))
    .map((figure) => (Number(figure) === 0 ? '0' : `${off < 0 ? '−' : '+'}${figure}`))
    .join('\n');
}

/** Figures to the thousandth of a millimetre, in the papers' units: what a reviewer compares. */
import { SAME_COUNT } from '#geometry/tolerances.ts';
import type { OneAUnit, PaperFigures } from '#handoff/paper-figures.ts';

/** mm; asks for the last place that is printed. */
const LAST_PLACE = 0.01;

export function exact(figures: PaperFigures, value: number): string {
  return exactEach(figures, value).join('\n');
}

export function exactEach(figures: PaperFigures, value: number): OneAUnit {
  return figures.lengths(value, { tolerance: LAST_PLACE });
}

/** A level: hundredths of a millimetre where that is all of it. */
export function levelFigures(figures: PaperFigures, level: number): OneAUnit {
  const isWhole = figures.units[0] === 'in' || Math.abs(level * 100 - Math.round(level * 100)) < SAME_COUNT;
  return isWhole ? figures.lengths(level) : exactEach(figures, level);
}

/** `+0.080 −0.080`, a line a unit. */
export function sides(figures: PaperFigures, plus: number, minus: number): string {
  const down = exactEach(figures, minus);
  return exactEach(figures, plus)
    .map((value, unit) => `+${value} −${down[unit]}`)
    .join('\n');
}

/** `+0.060`, `−0.020`, `0`. */
export function signed(figures: PaperFigures, off: number): string {
  return exactEach(figures, Math.abs(off))
    .map((figure) => (Number(figure) === 0 ? '0' : `${off < 0 ? '−' : '+'}${figure}`))
    .join('\n');
}

/** Figures to the thousandth of a millimetre, in the papers' units: what a reviewer compares. */
import { SAME_COUNT } from '#geometry/tolerances.ts';
import type { PaperFigures } from '#handoff/paper-figures.ts';

/** mm; asks for the last place that is printed. */
const LAST_PLACE = 0.01;

export function exact(figures: PaperFigures, value: number): string {
  return figures.length(value, { tolerance: LAST_PLACE });
}

/** A level: hundredths of a millimetre where that is all of it. */
export function levelFigure(figures: PaperFigures, level: number): string {
  const isWhole = figures.units[0] === 'in' || Math.abs(level * 100 - Math.round(level * 100)) < SAME_COUNT;
  return isWhole ? figures.length(level) : exact(figures, level);
}

/** `+0.080 −0.080`, a line a unit. */
export function sides(figures: PaperFigures, plus: number, minus: number): string {
  const [up, down] = [plus, minus].map((value) => exact(figures, value).split('\n'));
  return (up ?? []).map((value, unit) => `+${value} −${down?.[unit]}`).join('\n');
}

/** `+0.060`, `−0.020`, `0`. */
export function signed(figures: PaperFigures, off: number): string {
  return exact(figures, Math.abs(off))
    .split('\n')
    .map((figure) => (Number(figure) === 0 ? '0' : `${off < 0 ? '−' : '+'}${figure}`))
    .join('\n');
}

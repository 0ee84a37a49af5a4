/** Writes lengths, areas and volumes for people, in the unit on show. The job and the files never pass through here. */
import { millimetresIn } from './length-unit.ts';

/** What people may read lengths in. */
export type ShownUnit = 'mm' | 'in';

/** Two places of a millimetre and four of an inch both show a hundredth of a millimetre, well inside an etch tolerance. */
const PLACES: Record<ShownUnit, number> = { mm: 2, in: 4 };

/** The figure alone, as a field shows it; with a place more for what a micrometer reads. */
export function lengthFigure(millimetres: number, unit: ShownUnit, morePlaces = 0): string {
  return withoutMinusZero((millimetres / millimetresIn(unit)).toFixed(PLACES[unit] + morePlaces));
}

/** As fine as gauges read: an inch to its fourth place is 0.0025 mm. */
const GAUGED_PLACES: Record<ShownUnit, number> = { mm: 3, in: 4 };

/** The figure alone, as fine as gauges read, with its zeros. */
export function gaugedFigure(millimetres: number, unit: ShownUnit): string {
  return withoutMinusZero((millimetres / millimetresIn(unit)).toFixed(GAUGED_PLACES[unit]));
}

/** As fine as gauges read, with its sign; nothing has none. */
export function signedFigure(millimetres: number, unit: ShownUnit): string {
  const figure = gaugedFigure(Math.abs(millimetres), unit);
  if (Number(figure) === 0) return figure;
  return `${millimetres < 0 ? '−' : '+'}${figure}`;
}

/** With its unit, after a space that does not break. */
export function showLength(millimetres: number, unit: ShownUnit): string {
  return `${lengthFigure(millimetres, unit)}\u00a0${unit}`;
}

/** Square centimetres or square inches: what the trade calculates bath load in. */
export function showArea(squareMillimetres: number, unit: ShownUnit): string {
  const [amount, name] =
    unit === 'mm'
      ? [squareMillimetres / 100, 'cm²']
      : [squareMillimetres / (millimetresIn('in') * millimetresIn('in')), 'in²'];
  return `${amount < 10 ? amount.toFixed(2) : amount.toFixed(1)}\u00a0${name}`;
}

export function showMinutes(minutes: number): string {
  return `${minutes.toFixed(1)}\u00a0min`;
}

function withoutMinusZero(figure: string): string {
  return Number(figure) === 0 ? figure.replace('-', '') : figure;
}

/** Round figures for scales and axes. */
import { SAME_COUNT } from '#geometry/tolerances.ts';
import { decadeOf, powerOfTen } from '#maths/decade.ts';

/** Two figures, not above: enough to use the room, few enough to be read. */
export function twoFigures(factor: number): number {
  const step = powerOfTen(decadeOf(factor) - 1);
  return Number((Math.floor(factor / step + SAME_COUNT) * step).toPrecision(2));
}

/** 1, 2 or 5 times a power of ten, not below. */
export function roundUp(length: number): number {
  const decade = powerOfTen(decadeOf(length));
  return timesDecade([1, 2, 5].find((each) => each * decade >= length) ?? 10, decade);
}

/** The same, not above. */
export function roundDown(length: number): number {
  const decade = powerOfTen(decadeOf(length));
  return timesDecade([5, 2].find((each) => each * decade <= length) ?? 1, decade);
}

function timesDecade(step: number, decade: number): number {
  return Number((step * decade).toPrecision(1));
}

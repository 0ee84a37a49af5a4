/** Figures and points from options: finite decimal numbers, nothing else that JavaScript would take for one. */
import { type Finding, finding } from '#findings/finding.ts';
import { FARTHEST_PLACE } from '#units/farthest-place.ts';

const FIGURE = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i;

export type Taken<Value> = { readonly value: Value } | { readonly refused: Finding };

export function readNumber(text: string): number | undefined {
  const trimmed = text.trim();
  const value = FIGURE.test(trimmed) ? Number(trimmed) : Number.NaN;
  return Number.isFinite(value) ? value : undefined;
}

/** `X,Y`, no farther out than any drawing reaches. */
export function readPoint(option: string, text: string): Taken<readonly [number, number]> {
  const figures = text.split(',').map(readNumber);
  const [x, y] = figures;
  if (figures.length === 2 && isPlace(x) && isPlace(y)) return { value: [x, y] };
  return wrong(option, text, 'two figures with a comma between, in the unit of the drawing: 10,42.5');
}

export function readMinutes(text: string | undefined): Taken<number | undefined> {
  if (text === undefined) return { value: undefined };
  const value = readNumber(text);
  if (value !== undefined && value >= 0) return { value };
  return wrong('--minutes', text, 'immersed minutes, 0 or more: 42.5');
}

const MOST_SAMPLES = 1_000_000;

export function readSamples(text: string | undefined): Taken<number | undefined> {
  if (text === undefined) return { value: undefined };
  const value = readNumber(text);
  if (value !== undefined && Number.isInteger(value) && value >= 2 && value <= MOST_SAMPLES) return { value };
  return wrong('--samples', text, `a whole number from 2 to ${MOST_SAMPLES}: 201`);
}

function isPlace(value: number | undefined): value is number {
  return value !== undefined && Math.abs(value) <= FARTHEST_PLACE;
}

function wrong(option: string, found: string, expected: string): { readonly refused: Finding } {
  return { refused: finding('option-value-wrong', { option, found, expected }) };
}

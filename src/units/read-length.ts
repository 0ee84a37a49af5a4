/**
 * Reads a length as people type it: `2.2`, `2,2`, `0.087in`, `3/32 in`, `1 1/4"`, `2.2 mm`. Without a unit of its own it is
 * in the unit on show.
 */
import { millimetresIn } from './length-unit.ts';
import type { ShownUnit } from './show-length.ts';

const LENGTH = /^([+-]?)(?:(\d+)\s+)?(?:(\d*[.,]?\d+|\d+[.,])|(\d+)\s*\/\s*(\d+))\s*(mm|in|inch|inches|")?$/i;

/** Millimetres, or undefined when the text is no length. */
export function readLength(text: string, shown: ShownUnit): number | undefined {
  const match = LENGTH.exec(text.trim());
  if (match === null) return undefined;
  const [, sign, whole, decimal, top, bottom, unit] = match;
  if (whole !== undefined && top === undefined) return undefined;
  const fraction =
    top === undefined ? Number((decimal ?? '').replace(',', '.')) : Number(top) / Number(bottom);
  const amount = Number(whole ?? 0) + fraction;
  if (!Number.isFinite(amount)) return undefined;
  const named: ShownUnit | undefined =
    unit === undefined ? undefined : unit.toLowerCase() === 'mm' ? 'mm' : 'in';
  const millimetres = amount * millimetresIn(named ?? shown);
  return sign === '-' ? -millimetres : millimetres;
}

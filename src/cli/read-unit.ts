/** A unit of length from an option, by its short name. */
import { finding } from '#findings/finding.ts';
import { LENGTH_UNITS, type LengthUnit } from '#units/length-unit.ts';
import type { Taken } from './read-number.ts';

export function readUnit(option: string, text: string | undefined): Taken<LengthUnit | undefined> {
  if (text === undefined) return { value: undefined };
  const known = LENGTH_UNITS.find((unit) => unit.toLowerCase() === text.trim().toLowerCase());
  if (known !== undefined) return { value: known };
  const expected = `a unit by its short name: ${LENGTH_UNITS.join(', ')}`;
  return { refused: finding('option-value-wrong', { option, found: text, expected }) };
}

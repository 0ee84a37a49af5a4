/** The limits that a length is declared with, mm; nearer where other figures leave less. */
import { assert } from '#geometry/assert.ts';
import type { Limits, Part } from '#job/fields/field.ts';

export function lengthLimits({ control, label }: Part, within: Partial<Limits> = {}): Limits {
  assert(control.as === 'length', `${label} is declared as a length`);
  const { least = control.least, most = control.most } = within;
  return { least: Math.max(least, control.least), most: Math.min(most, control.most) };
}

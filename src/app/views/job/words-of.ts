/** What a choice of the job can be, in words, by what the file says. */
import { assert } from '#geometry/assert.ts';
import type { Part } from '#job/fields/field.ts';

export function wordsOf({ control, label }: Part): Readonly<Record<string, string>> {
  assert(control.as === 'choice', `${label} is declared as a choice`);
  return control.words;
}

/** Alloys and baths to choose from: the built-in ones and the job's own. */
import { type KnownFigures, knownFigures } from '#bath/known-figures.ts';
import type { JobFile } from '#job/job-file.ts';

export function figuresOf({ figures }: JobFile): KnownFigures {
  return knownFigures(typeof figures === 'object' ? figures : undefined);
}

/** Findings about levels, openings and scribe lines. */
import type { WordsFor } from './words.ts';

export interface PlanFacts {
  readonly 'opening-missing': { readonly level: number; readonly allowance: number };
}

export const planWords: WordsFor<PlanFacts> = {
  'opening-missing': {
    severity: 'stop',
    title: 'Pocket without an opening',
    say: () => ({ reason: 'Pocket without an opening.', remedy: 'Widen the pocket.' }),
  },
};

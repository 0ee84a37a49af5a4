/** Findings about what cannot be made. */
import type { WordsFor } from './words.ts';

export interface MakingFacts {
  readonly 'cut-deeper-than-practice': { readonly depth: number; readonly limit: number };
}

export const makingWords: WordsFor<MakingFacts> = {
  'cut-deeper-than-practice': {
    severity: 'warn',
    title: 'Deeper than practice',
    say: () => ({ reason: 'Deeper than practice.', remedy: 'Etch less deep.' }),
  },
};

/** Findings about regions and requirements. */
import type { WordsFor } from './words.ts';

export interface PartFacts {
  readonly 'region-outside-sheet': { readonly area: number };
}

export const partWords: WordsFor<PartFacts> = {
  'region-outside-sheet': {
    severity: 'warn',
    title: 'Region outside the outline',
    say: () => ({ reason: 'Region outside the outline.', remedy: 'Move it inside the outline or drop it.' }),
  },
};

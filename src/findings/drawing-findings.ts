/** Findings about the drawing as read. */
import type { WordsFor } from './words.ts';

export interface DrawingFacts {
  readonly 'drawing-unit-missing': Record<string, never>;
}

export const drawingWords: WordsFor<DrawingFacts> = {
  'drawing-unit-missing': {
    severity: 'stop',
    title: 'No unit',
    say: () => ({
      reason: 'the drawing does not say in which unit it is drawn.',
      remedy: 'Set drawingUnits in the job.',
    }),
  },
};

/** Findings about files on disk and what they hold at all. */
import type { WordsFor } from './words.ts';

export interface FileFacts {
  readonly 'file-missing': { readonly path: string };
}

export const fileWords: WordsFor<FileFacts> = {
  'file-missing': {
    severity: 'stop',
    title: 'File not found',
    say: () => ({ reason: 'File not found.', remedy: 'Check the path.' }),
  },
};

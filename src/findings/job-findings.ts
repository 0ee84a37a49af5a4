/** Findings about the job file. */
import type { WordsFor } from './words.ts';

export interface JobFacts {
  readonly 'job-not-json': { readonly detail: string };
}

export const jobWords: WordsFor<JobFacts> = {
  'job-not-json': {
    severity: 'stop',
    title: 'Job file is not JSON',
    say: () => ({ reason: 'Job file is not JSON.', remedy: 'Mend the file.' }),
  },
};

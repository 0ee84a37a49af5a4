/** What is known of the jobs that this browser keeps. Types only; `job-list.ts` fills it. */
import type { JobCard } from './kept-job.ts';

export interface JobListState {
  /** Last changed first. */
  readonly jobs: readonly JobCard[];
  /** Ids of those that other windows hold. */
  readonly elsewhere: ReadonlySet<string>;
  readonly keeping: 'nothing' | 'writing' | 'kept';
  /** Why the browser keeps nothing. */
  readonly refusal: string | undefined;
  /** The one deleted last, to be had back. */
  readonly deleted: JobCard | undefined;
}

export const EMPTY_JOB_LIST: JobListState = {
  jobs: [],
  elsewhere: new Set(),
  keeping: 'nothing',
  refusal: undefined,
  deleted: undefined,
};

import type { JobFile } from '#job/job-file.ts';

/** What a part of the panel shows: the job as it is, and with its defaults filled in. */
export interface JobPart {
  readonly job: JobFile;
  readonly filled: JobFile;
}

import type { Provenance } from '#bath/provenance.ts';
import type { JobFile } from '#job/job-file.ts';

/** What a part of the panel shows: the job as it is, and with its defaults filled in. */
export interface JobPart {
  readonly job: JobFile;
  readonly filled: JobFile;
  /** Where its figures come from, those that are filled in too; left out where none follows from others. */
  readonly provenance?: readonly Provenance[];
}

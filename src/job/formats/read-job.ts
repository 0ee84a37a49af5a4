/** Reads the text of a job file. Every fault is gathered, with its path and line; a job comes back only when there is none. */
import type { Finding } from '#findings/finding.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import { checkChoices } from './check-choices.ts';
import { type Format, readFormat } from './read-format.ts';

export interface JobReading {
  readonly jobFile?: JobFile;
  readonly findings: readonly Finding[];
}

const FORMAT: Format<JobFile> = {
  format: 'isobath-job',
  version: 1,
  schema: JOB.schema,
  check: checkChoices,
};

export function readJob(text: string): JobReading {
  const { value, findings } = readFormat(text, FORMAT);
  return value === undefined ? { findings } : { jobFile: value, findings };
}

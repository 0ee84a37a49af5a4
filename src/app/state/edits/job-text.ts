/** The job as its file holds it: what the command line reads is, byte for byte, what the workbench plans from. */

import type { OpenDocument } from '#app/state/workbench-state.ts';
import type { JobFile } from '#job/job-file.ts';

/** A job that was read and not changed since is written as it was read. */
export function documentText({ job, asRead }: OpenDocument): string {
  return asRead?.job === job ? asRead.text : jobText(job);
}

export function jobText(job: JobFile): string {
  return `${JSON.stringify(job, undefined, 2)}\n`;
}

/** The job as its file holds it: what the command line reads is, byte for byte, what the workbench plans from. */
import type { JobFile } from '#part/job-file.ts';

export function jobText(job: JobFile): string {
  return `${JSON.stringify(job, undefined, 2)}\n`;
}

/** Which files a job is about: asked before the run, by whoever has to fetch them. */
import type { Finding } from '#findings/finding.ts';
import { readJob } from '#part/read-job.ts';

export interface FilesNamed {
  readonly drawing: string;
  readonly figures: string | undefined;
}

/** Paths as they stand in the job; or everything that is wrong with the job. */
export function filesNamed(jobText: string): FilesNamed | { readonly refused: readonly Finding[] } {
  const { jobFile, findings } = readJob(jobText);
  if (jobFile === undefined) return { refused: findings };
  const { drawing, figures } = jobFile;
  return { drawing, figures: typeof figures === 'string' ? figures : undefined };
}

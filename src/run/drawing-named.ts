/** Which drawing a job is about: asked before the run, by whoever has to fetch it. */
import type { Finding } from '#findings/finding.ts';
import { readJob } from '#part/read-job.ts';

/** The drawing's path as it stands in the job; or everything that is wrong with the job. */
export function drawingNamed(
  jobText: string,
): { readonly drawing: string } | { readonly refused: readonly Finding[] } {
  const { jobFile, findings } = readJob(jobText);
  return jobFile === undefined ? { refused: findings } : { drawing: jobFile.drawing };
}

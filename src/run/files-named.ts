/** Which files a job is about: asked before the run, by whoever has to fetch them. */
import type { Finding } from '#findings/finding.ts';
import { besideNames } from '#job/formats/files-beside.ts';
import { readJob } from '#job/formats/read-job.ts';

export interface NamedFiles {
  /** The drawing's path as it stands in the job. */
  readonly drawing: string;
  /** That of the far face, where it has one of its own. */
  readonly farDrawing?: string;
  /** Of text files that hold a part of the job, as they stand in it. */
  readonly beside: readonly string[];
}

/** Or everything that is wrong with the job. */
export function filesNamed(jobText: string): NamedFiles | { readonly refused: readonly Finding[] } {
  const { jobFile, findings } = readJob(jobText);
  if (jobFile === undefined) return { refused: findings };
  const farDrawing = jobFile.far?.drawing;
  return {
    drawing: jobFile.drawing,
    ...(farDrawing === undefined ? {} : { farDrawing }),
    beside: besideNames(jobFile),
  };
}

/** Has a job make a hand-off file, or leave it out. */
import { HANDOFF_FILES, type HandoffFile } from '#job/handoff-list.ts';
import type { JobFile } from '#job/job-file.ts';

/** Has a job make every hand-off file. */
export function chooseAllFiles(job: JobFile): JobFile {
  return { ...job, handoff: { ...job.handoff, files: [...HANDOFF_FILES] } };
}

export function chooseFile(job: JobFile, file: HandoffFile, isWanted: boolean): JobFile {
  const { files: before = [], ...handoff } = job.handoff ?? {};
  const files = HANDOFF_FILES.filter((each) => (each === file ? isWanted : before.includes(each)));
  if (files.length > 0) return { ...job, handoff: { ...handoff, files } };
  const { handoff: _, ...rest } = job;
  return Object.keys(handoff).length === 0 ? rest : { ...rest, handoff };
}

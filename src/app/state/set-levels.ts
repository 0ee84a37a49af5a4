/** Takes a list of levels for a job's own. */
import type { JobFile } from '#part/job-file.ts';
import { millimetresIn } from '#units/length-unit.ts';

/** Levels in mm, deepest first or in any order. Locked levels go: a list is taken as it stands. */
export function setLevels(job: JobFile, levels: readonly number[]): JobFile {
  const { lockedLevels, ...rest } = job;
  const unit = millimetresIn(job.units ?? 'mm');
  return { ...rest, levels: levels.map((level) => Number((level / unit).toFixed(6))) };
}

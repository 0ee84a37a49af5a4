/** Which levels a job takes, as pure functions: (job, arguments) → job. Depths come in millimetres. */

import type { JobFile } from '#job/job-file.ts';
import { SAME_LEVEL } from '#units/depth-tolerances.ts';
import { fromJobUnits, inJobUnits } from './edit-figures.ts';

/** As drawn, or the fewest that hold every tolerance. Locked levels go with the search that they are for. */
export function setLevelRule(job: JobFile, levels: 'as-drawn' | 'fewest'): JobFile {
  if (levels === 'fewest') return { ...job, levels };
  const { lockedLevels, ...rest } = job;
  return { ...rest, levels };
}

/** A list of levels, as it stands; empty, they are as drawn again. */
export function listLevels(job: JobFile, levels: readonly number[]): JobFile {
  const { lockedLevels, ...rest } = job;
  const list = distinct(levels.map((level) => inJobUnits(job, level)));
  return { ...rest, levels: list.length === 0 ? 'as-drawn' : list };
}

/** Levels that the search must take. */
export function lockLevels(job: JobFile, levels: readonly number[]): JobFile {
  const { lockedLevels, ...rest } = job;
  const locked = distinct(levels.map((level) => inJobUnits(job, level)));
  return locked.length === 0 ? rest : { ...rest, lockedLevels: locked };
}

/** In mm. */
export function lockedLevelsOf(job: JobFile): number[] {
  return (job.lockedLevels ?? []).map((level) => fromJobUnits(job, level));
}

export function isLocked(job: JobFile, level: number): boolean {
  return lockedLevelsOf(job).some((locked) => Math.abs(locked - level) < SAME_LEVEL);
}

/**
 * Moves a level, and never a requirement: where levels are searched, the search is held to the new depth; else the job lists its
 * levels from now on, as planned but for this one. What then falls out of its tolerance is a finding of the plan.
 */
export function moveLevel(
  job: JobFile,
  move: {
    readonly from: number;
    readonly to: number;
    /** All that are planned, the moved one among them. */
    readonly levels: readonly number[];
  },
): JobFile {
  const isFrom = (depth: number) => Math.abs(depth - move.from) < SAME_LEVEL;
  const moved = (depths: readonly number[]) => depths.map((depth) => (isFrom(depth) ? move.to : depth));
  if (job.levels === 'fewest') {
    const locked = lockedLevelsOf(job);
    return lockLevels(job, locked.some(isFrom) ? moved(locked) : [...locked, move.to]);
  }
  const listed = Array.isArray(job.levels)
    ? job.levels.map((level) => fromJobUnits(job, level))
    : move.levels;
  return listLevels(job, moved(listed));
}

/**
 * Lets regions end on another level: their own levels are no more, and each takes what is nearest within its tolerance. No requirement is
 * touched; one that accepts none of the levels that are left is a finding of the plan.
 */
export function joinLevel(
  job: JobFile,
  join: {
    /** Levels of the regions that join. */
    readonly from: readonly number[];
    readonly to: number;
    /** All that are planned. */
    readonly levels: readonly number[];
  },
): JobFile {
  const goes = (depth: number) => join.from.some((from) => Math.abs(from - depth) < SAME_LEVEL);
  return listLevels(
    job,
    [...join.levels.filter((level) => !goes(level)), join.to].sort((a, b) => b - a),
  );
}

function distinct(levels: readonly number[]): number[] {
  return [...new Set(levels)];
}

/** Which levels a job takes, as pure functions: (job, arguments) → job. Depths come in millimetres. */
import type { JobFile } from '#job/job-file.ts';
import { fromJobUnits, inJobUnits } from './edit-figures.ts';

/** Two depths nearer than this are one level: far below any tolerance, far above rounding. */
const SAME_DEPTH = 1e-5;

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
  return lockedLevelsOf(job).some((locked) => Math.abs(locked - level) < SAME_DEPTH);
}

/**
 * Moves a level: where the job lists its levels, the one in the list; where they are searched, the search is held to the new
 * depth; else every requirement of that depth.
 */
export function moveLevel(job: JobFile, move: { from: number; to: number; thickness: number }): JobFile {
  const isFrom = (depth: number) => Math.abs(depth - move.from) < SAME_DEPTH;
  const moved = (depths: readonly number[]) => depths.map((depth) => (isFrom(depth) ? move.to : depth));
  if (Array.isArray(job.levels)) {
    return listLevels(job, moved(job.levels.map((level) => fromJobUnits(job, level))));
  }
  if (job.levels === 'fewest') {
    const locked = lockedLevelsOf(job);
    return lockLevels(job, locked.some(isFrom) ? moved(locked) : [...locked, move.to]);
  }
  const { thickness } = move;
  const requirements = job.requirements.map((each) => {
    if (each.depth !== undefined && isFrom(fromJobUnits(job, each.depth))) {
      return { ...each, depth: inJobUnits(job, move.to) };
    }
    if (each.thickness !== undefined && isFrom(thickness - fromJobUnits(job, each.thickness))) {
      return { ...each, thickness: inJobUnits(job, thickness - move.to) };
    }
    return each;
  });
  return { ...job, requirements };
}

function distinct(levels: readonly number[]): number[] {
  return [...new Set(levels)];
}

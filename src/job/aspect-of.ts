/** Which face and hand files are of, and what the part is called without it: `name` of the job says all of it at once. */
import type { Job, JobAspect } from './job.ts';

export function aspectOf({ name, aspect = { part: name } }: Pick<Job, 'name' | 'aspect'>): JobAspect {
  return aspect;
}

/** Drawn left to right as the drawing is not: the far face as seen from it, or the opposite hand, and not both. */
export function isDrawnMirrored({ face, isOpposite = false }: JobAspect): boolean {
  return isOpposite !== (face === 'far');
}

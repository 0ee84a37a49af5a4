/** A region as a job names it, and which requirements are about it. */

import type { SheetSide } from '#job/job.ts';
import type { JobFile } from '#job/job-file.ts';
import type { DrawingPoint } from './edit-sheet.ts';

type Requirement = JobFile['requirements'][number];

/** A region to ask something of, as the job sees it: coordinates of the drawing, in the drawing's unit. */
export interface RegionTarget {
  readonly layer: string;
  readonly face: SheetSide;
  /** A point well inside. */
  readonly at: DrawingPoint;
  readonly holds: (point: DrawingPoint) => boolean;
}

export function isAskedAt(requirement: Requirement, target: RegionTarget): boolean {
  return requirement.at !== undefined && target.holds(requirement.at) && isOnFace(requirement, target);
}

export function isAskedOfLayer(requirement: Requirement, target: RegionTarget): boolean {
  return (
    requirement.layer !== undefined && requirement.layer === target.layer && isOnFace(requirement, target)
  );
}

/** One that names no face is about the near one. */
function isOnFace({ face = 'near' }: Requirement, target: RegionTarget): boolean {
  return face === 'both' || face === target.face;
}

/** What a requirement about the target alone says of where it is. */
export function placeOf({ at: [x, y], face }: RegionTarget): Pick<Requirement, 'at' | 'face'> {
  return { at: [x, y], ...namedFace(face) };
}

/** The near face is not named. */
export function namedFace(face: SheetSide | undefined): Pick<Requirement, 'face'> {
  return face === 'far' ? { face } : {};
}

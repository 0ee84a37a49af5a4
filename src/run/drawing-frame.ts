/** A drawing far from its origin is planned in a frame of its own: what is said of it goes out, the job comes in. */
import type { Drawing } from '#drawing/drawing.ts';
import type { Finding } from '#findings/finding.ts';
import { moveFinding } from '#findings/move-finding.ts';
import type { Point } from '#geometry/point.ts';
import type { JobFile } from '#job/job-file.ts';
import { moveJob } from '#job/move-job.ts';
import { type ResolvedJob, resolveJob } from '#job/resolve/resolve-job.ts';

interface Frames {
  /** Findings given in the drawing's own frame. */
  readonly outward: (findings: readonly Finding[]) => readonly Finding[];
  /** From the drawing's own frame into that of its curves; undefined where they are one. */
  readonly inward: Point | undefined;
}

export function framesOf({ origin }: Drawing): Frames {
  if (origin === undefined) return { outward: (findings) => findings, inward: undefined };
  return {
    outward: (findings) => findings.map((each) => moveFinding(each, origin)),
    inward: { x: -origin.x, y: -origin.y },
  };
}

/** The job resolved, in the frame of the drawing's curves. */
export function jobIn(drawing: Drawing, jobFile: JobFile): ResolvedJob {
  const { inward } = framesOf(drawing);
  const { job, ...resolved } = resolveJob(jobFile, drawing.unit);
  if (job === undefined) return resolved;
  return { ...resolved, job: inward === undefined ? job : moveJob(job, inward) };
}

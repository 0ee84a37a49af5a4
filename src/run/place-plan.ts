/** The plan with what stands beside it wherever it is shown, before anything of it is measured. */
import { makingProvenance } from '#checks/making-limits.ts';
import type { Drawing } from '#drawing/drawing.ts';
import type { Finding } from '#findings/finding.ts';
import { cautionsFor } from '#handoff/cautions.ts';
import { sizingRecord } from '#handoff/sizing-record.ts';
import type { Job } from '#job/job.ts';
import type { JobFile } from '#job/job-file.ts';
import { handoffProvenance } from '#job/resolve/resolve-handoff.ts';
import { levelPlan, openPlan } from '#plan/make-plan.ts';
import { framesOf } from './drawing-frame.ts';
import type { AskedFaces } from './find-asked.ts';
import { type RunMemory, sha256For } from './run-memory.ts';
import type { RunOptions } from './run-options.ts';
import { openAhead } from './share/open-ahead.ts';

export interface ToPlace extends AskedFaces {
  /** In the frame of the drawing's curves. */
  readonly job: Job;
  readonly filled: JobFile;
  readonly drawing: Drawing;
  readonly file: { readonly name: string; readonly bytes: Uint8Array };
  /** All that was said before there was a plan. */
  readonly findings: readonly Finding[];
  readonly memory: RunMemory;
  readonly threads: RunOptions['threads'];
  readonly sha256: NonNullable<RunOptions['sha256']>;
}

export type Placed = Awaited<ReturnType<typeof placePlan>>;

/** `found`: what was said before and what the plan says. */
export async function placePlan(to: ToPlace) {
  const { job, filled, drawing, file, memory, near, far, drawn, findings } = to;
  const levelled = levelPlan({ ...near, far, job, memory: memory.clusters });
  await openAhead(levelled, to.threads);
  const plan = openPlan(levelled);
  const unit = drawing.unit ?? 'mm';
  const sizing = sizingRecord(job, { drawn: drawn.sheet, left: plan.sheet });
  const toShow = {
    job: jobOfPlan(filled),
    drawing: { file: file.name, sha256: sha256For(memory, file.bytes, to.sha256), unit },
    plan,
    provenance: [...job.provenance, ...makingProvenance(), ...handoffProvenance(filled)],
    cautions: cautionsFor(job.process),
    sizing,
    contours: memory.contours,
  };
  return { plan, unit, sizing, toShow, found: [...findings, ...framesOf(drawing).outward(plan.findings)] };
}

/** Which files are written beside a plan, and which schema an editor checks its job by, is no part of it: its hash and its review stay. */
function jobOfPlan({ $schema, handoff, ...job }: JobFile): JobFile {
  if (handoff === undefined) return job;
  const { files, ...rest } = handoff;
  return Object.keys(rest).length === 0 ? job : { ...job, handoff: rest };
}

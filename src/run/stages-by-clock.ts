/** Which stages of a plan run their minutes by the clock. */
import { isTooThinToGauge } from '#checks/tolerance-budget.ts';
import type { ShownPlan } from '#job/formats/plan-file.ts';
import type { JobFile } from '#job/job-file.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';

/** Numbers of the stages so thin that a reading at four fifths of their minutes would say nothing (method.md, M6.3). */
export function stagesByClock({ job, drawing, stages }: ShownPlan): ReadonlySet<number> {
  const process = resolveJob(job as JobFile, drawing.unit).job?.process;
  if (process === undefined) return new Set();
  return new Set(stages.filter(({ etch }) => isTooThinToGauge(etch, process)).map(({ number }) => number));
}

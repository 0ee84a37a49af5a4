/** What the benchmarks of plans run, in one module that is bundled first. */
import { makePlan } from '#plan/make-plan.ts';
import { createClusterMemory } from '#plan/open-clusters.ts';
import { runJob } from '#run/run-job.ts';
import { createRunMemory } from '#run/run-memory.ts';

export const runWork = { makePlan, createClusterMemory, runJob, createRunMemory };

export type RunWork = { readonly runWork: typeof runWork };

/** What the benchmarks of plans run, in one module that is bundled first. */
import { HANDOFF_FILES } from '#job/handoff-list.ts';
import { makePlan } from '#plan/make-plan.ts';
import { createClusterMemory } from '#plan/open-clusters.ts';
import { runJob } from '#run/run-job.ts';
import { createRunMemory } from '#run/run-memory.ts';
import { differentPocketsFiles, meshFiles } from '#support/drawings/pocket-grid-files.ts';

export const runWork = {
  makePlan,
  createClusterMemory,
  runJob,
  createRunMemory,
  differentPocketsFiles,
  meshFiles,
  HANDOFF_FILES,
};

export type RunWork = { readonly runWork: typeof runWork };

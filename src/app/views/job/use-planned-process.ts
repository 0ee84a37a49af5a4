/** Etch rate and etch factor that the plan on show was made with, also where its job leaves them to bath or coupons. */
import { useMemo } from 'react';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Job } from '#job/job.ts';
import type { JobFile } from '#job/job-file.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';

export function usePlannedProcess(): Pick<Job['process'], 'rate' | 'etchFactor'> | undefined {
  const plan = useWorkbenchState((state) => state.derived.page?.plan);
  return useMemo(() => plan && resolveJob(plan.job as JobFile, plan.drawing.unit).job?.process, [plan]);
}

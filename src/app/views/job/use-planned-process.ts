/** Etch rate and etch factor that the plan on show was made with, also where its job leaves them to bath or coupons. */
import { useMemo } from 'react';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Provenance } from '#bath/provenance.ts';
import type { Job } from '#job/job.ts';
import type { JobFile } from '#job/job-file.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';

interface PlannedProcess extends Pick<Job['process'], 'rate' | 'etchFactor'> {
  /** Where the figure of a field, by its path, comes from; undefined where several do. */
  readonly sourceOf: (field: string) => Provenance | undefined;
}

export function usePlannedProcess(): PlannedProcess | undefined {
  const plan = useWorkbenchState((state) => state.derived.page?.plan);
  return useMemo(() => {
    const job = plan && resolveJob(plan.job as JobFile, plan.drawing.unit).job;
    if (job === undefined) return undefined;
    const sourceOf = (field: string) => {
      const [row, ...others] = job.provenance.filter((each) => each.field === field);
      return others.length === 0 ? row : undefined;
    };
    return { ...job.process, sourceOf };
  }, [plan]);
}

/** The plan file of the plan on show, read when somebody looks: undefined until the plan is measured and checked. */
import { useMemo } from 'react';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';

export function usePlanFile(): PlanFile | undefined {
  const bytes = useWorkbenchState(
    ({ derived }) => derived.page?.files.find(({ name }) => name === 'plan.json')?.bytes,
  );
  return useMemo(
    () => (bytes === undefined ? undefined : (JSON.parse(new TextDecoder().decode(bytes)) as PlanFile)),
    [bytes],
  );
}

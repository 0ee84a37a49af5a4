/** The text of the plan.json on show; undefined until the plan is measured and checked. */
import { useMemo } from 'react';
import { useWorkbenchState } from './workbench-context.ts';

export function usePlanText(): string | undefined {
  const bytes = useWorkbenchState(({ derived }) =>
    derived.isStale ? undefined : derived.page?.files.find(({ name }) => name === 'plan.json')?.bytes,
  );
  return useMemo(() => (bytes === undefined ? undefined : new TextDecoder().decode(bytes)), [bytes]);
}

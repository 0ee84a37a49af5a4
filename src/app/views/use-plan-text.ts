/** The text of the plan.json on show; undefined until the plan is measured and checked. */
import { useMemo } from 'react';
import { useBench } from './workbench-context.ts';

export function usePlanText(): string | undefined {
  const bytes = useBench(({ derived }) =>
    derived.isStale ? undefined : derived.page?.files.find(({ name }) => name === 'plan.json')?.bytes,
  );
  return useMemo(() => (bytes === undefined ? undefined : new TextDecoder().decode(bytes)), [bytes]);
}

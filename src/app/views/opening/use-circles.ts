/** Circles inside regions, of which the engineer has not said yet what they are. */
import { useMemo } from 'react';
import { type CircleGroup, circlesOf } from '#app/state/opening/circles-inside.ts';
import { useDocument, useWorkbenchState } from '#app/views/workbench-context.ts';

export function useCircles(): readonly CircleGroup[] {
  const { job, unsaid } = useDocument() ?? {};
  const page = useWorkbenchState((state) => state.derived.page);
  const shapes = useWorkbenchState((state) => state.derived.shapes);
  const isAsked = unsaid?.includes('circles') === true && !unsaid.includes('stock');
  return useMemo(
    () => (job === undefined || !isAsked || page?.plan === undefined ? [] : circlesOf({ page, shapes }, job)),
    [job, isAsked, page, shapes],
  );
}

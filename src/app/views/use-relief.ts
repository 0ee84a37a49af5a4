/** Fetches the relief of the plan on show when it is first looked at, and again when the plan has changed. */
import { useEffect } from 'react';
import { useBench, useWorkbench } from './workbench-context.ts';

export function useRelief(): void {
  const { planner } = useWorkbench();
  const view = useBench((state) => state.session.view);
  const { page, relief, isStale } = useBench((state) => state.derived);
  const isWanted = view === 'relief' && page?.planFile !== undefined && !isStale && relief?.of !== page;
  useEffect(() => {
    if (isWanted) planner.fetchRelief();
  }, [isWanted, planner]);
}

/** Lines that came back, as the sheet shows them. */
import { useMemo } from 'react';
import { type ShownReturned, shownReturned } from '#app/state/shown-returned.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';

export function useShownReturned(): ShownReturned | undefined {
  const page = useWorkbenchState(({ derived }) => derived.page);
  const comparison = useWorkbenchState(({ derived }) => derived.comparison);
  const returned = useWorkbenchState(({ session }) => session.returned);
  return useMemo(() => shownReturned({ page, comparison }, { returned }), [page, comparison, returned]);
}

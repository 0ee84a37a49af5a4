/** The bands along drawn edges that the sheet shows. */
import { useMemo } from 'react';
import { type EdgeBand, shownBands } from '#app/state/shown-bands.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';

export function useShownBands(): readonly EdgeBand[] {
  const page = useWorkbenchState(({ derived }) => derived.page);
  const edges = useWorkbenchState(({ derived }) => derived.edges);
  const { showsBands, edge } = useWorkbenchState(({ session }) => session);
  return useMemo(() => shownBands({ page, edges }, { showsBands, edge }), [page, edges, showsBands, edge]);
}

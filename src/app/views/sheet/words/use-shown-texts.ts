/** The drawing's own texts that are shown: all where they are switched on, else the figures that something is asked about. */
import { useMemo } from 'react';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import type { DrawnNote } from '#drawing/drawing.ts';
import type { TriedFigure } from './tried-figures.ts';

export function useShownTexts(showsAll: boolean, tried: readonly TriedFigure[]): readonly DrawnNote[] {
  const page = useWorkbenchState((state) => state.derived.page);
  return useMemo(
    () =>
      (page?.notes ?? []).filter(
        ({ text, at }) => showsAll || tried.some((each) => each.text === text && each.at === at),
      ),
    [page, showsAll, tried],
  );
}

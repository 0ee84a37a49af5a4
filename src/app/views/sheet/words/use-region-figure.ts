/** The figure that stands in a region under its name: its depth, or what is left under it; at most where the sheet tapers, at its label where it was surveyed. */
import { useMemo } from 'react';
import { figureMeaning } from '#app/state/figure-meaning.ts';
import { leftFigure } from '#app/state/left-of-sheet.ts';
import { useLeft } from '#app/views/use-left.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import type { ShownRegion } from '#job/formats/plan-file.ts';
import { lengthFigure } from '#units/show-length.ts';

export function useRegionFigure(): (region: ShownRegion) => string {
  const left = useLeft();
  const unit = useWorkbenchState((state) => state.session.unit);
  const figures = useWorkbenchState(figureMeaning);
  return useMemo(
    () =>
      ({ id, level }) => {
        if (figures === 'depth') return lengthFigure(level, unit);
        return left === undefined ? '' : leftFigure(left([id], level), unit);
      },
    [figures, unit, left],
  );
}

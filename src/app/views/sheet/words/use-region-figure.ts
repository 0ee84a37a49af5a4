/** The figure that stands in a region under its name: its depth, or what is left under it; at most, where the sheet tapers. */
import { useMemo } from 'react';
import { figureMeaning } from '#app/state/figure-meaning.ts';
import { isTapered, sheetThickness } from '#app/state/sheet-thickness.ts';
import { useDocument, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { ShownRegion } from '#job/formats/plan-file.ts';
import { lengthFigure } from '#units/show-length.ts';

export function useRegionFigure(): (region: ShownRegion) => string {
  const job = useDocument()?.job;
  const unit = useWorkbenchState((state) => state.session.unit);
  const figures = useWorkbenchState(figureMeaning);
  const thickness = job === undefined ? 0 : sheetThickness(job);
  const isSloped = job !== undefined && isTapered(job);
  return useMemo(
    () =>
      ({ level }) => {
        if (figures === 'depth') return lengthFigure(level, unit);
        return `${isSloped ? '≤' : ''}${lengthFigure(thickness - level, unit)}`;
      },
    [figures, unit, thickness, isSloped],
  );
}

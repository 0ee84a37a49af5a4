/** Figures of the drawing that stand in regions and are not requirements yet, as the drawing writes them. */
import { useMemo } from 'react';
import { depthOffers, type JudgedOffer, type Meaning } from '#app/state/edits/depth-offers.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import { useDocument, useWorkbenchState } from '#app/views/workbench-context.ts';

export function useFigures(meaning?: Meaning): readonly JudgedOffer[] {
  const job = useDocument()?.job;
  const page = useWorkbenchState((state) => state.derived.page);
  const shapes = useWorkbenchState((state) => state.derived.shapes);
  return useMemo(
    () =>
      job === undefined
        ? []
        : depthOffers({ page, shapes, prefix: '', thickness: sheetThickness(job), meaning }),
    [page, shapes, job, meaning],
  );
}

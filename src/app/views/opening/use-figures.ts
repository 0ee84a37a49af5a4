/** Figures of the drawing that stand in regions and are not requirements yet, as the drawing writes them. */
import { useMemo } from 'react';
import { depthOffers, type JudgedOffer, type Meaning, unreadFigures } from '#app/state/edits/depth-offers.ts';
import { type FigureRow, figureRows } from '#app/state/edits/figure-choice.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import { useDocument, useWorkbenchState } from '#app/views/workbench-context.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';

/** What each of them would give; those that differ within a region are left out. */
export function useFigureRows(): readonly FigureRow[] {
  const job = useDocument()?.job;
  const offers = useFigures();
  return useMemo(() => {
    if (job === undefined || offers.length === 0) return [];
    const minWeb = resolveJob(job, job.drawingUnits ?? 'mm').job?.rules.minWeb ?? 0;
    return figureRows(offers, { thickness: sheetThickness(job), minWeb });
  }, [offers, job]);
}

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

/** Texts with a figure that are read as nothing, in regions of which nothing is required. */
export function useUnread(): ReturnType<typeof unreadFigures> {
  const job = useDocument()?.job;
  const page = useWorkbenchState((state) => state.derived.page);
  const shapes = useWorkbenchState((state) => state.derived.shapes);
  return useMemo(
    () =>
      job === undefined ? [] : unreadFigures({ page, shapes, prefix: '', thickness: sheetThickness(job) }),
    [page, shapes, job],
  );
}

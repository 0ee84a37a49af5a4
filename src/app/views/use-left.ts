/** What depths leave of the sheet on show; undefined while no job is open. */
import { useMemo } from 'react';
import { type LeftOfSheet, leftOfSheet } from '#app/state/left-of-sheet.ts';
import { useSized } from './use-sized.ts';
import { useDocument, useWorkbenchState } from './workbench-context.ts';

/** Of regions by their ids, none for land, at a depth in mm. */
export type Left = (regions: readonly string[], depth: number) => LeftOfSheet;

export function useLeft(): Left | undefined {
  const job = useDocument()?.job;
  const survey = useWorkbenchState(({ derived }) => derived.page?.results?.survey);
  const sized = useSized();
  return useMemo(() => {
    if (job === undefined) return undefined;
    return (regions, depth) => leftOfSheet({ job, survey, sized }, regions, depth);
  }, [job, survey, sized]);
}

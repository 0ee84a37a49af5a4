/** What the engineer does to the sheet with regions picked on it. */
import type { StoreApi } from 'zustand/vanilla';
import { addHoles, setSheetChoice } from '#app/state/edits/edit-sheet.ts';
import type { JobFile } from '#job/job-file.ts';
import { regionTargets } from './region-targets.ts';
import type { WorkbenchState } from './workbench-state.ts';

type Edit = (label: string, change: (job: JobFile) => JobFile) => void;

export function sheetActions(store: StoreApi<WorkbenchState>, edit: Edit) {
  const picked = () => {
    const targets = regionTargets(store.getState());
    return store.getState().session.selection.flatMap((id) => targets.get(id) ?? []);
  };
  return {
    /** The sheet is what lies inside the outline around the picked region. */
    sheetAroundSelection: () => {
      const [region] = picked();
      if (region === undefined) return;
      const [x, y] = region.at;
      edit('edge of the part around a region', (job) => setSheetChoice(job, { at: [x, y] }));
    },
    /** The picked regions are holes through the sheet. */
    punchSelection: (label: string) => {
      const regions = picked();
      if (regions.length > 0) edit(label, (job) => addHoles(job, regions));
    },
  };
}

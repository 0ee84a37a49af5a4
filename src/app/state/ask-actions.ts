/** What the engineer asks of the regions picked. */
import type { StoreApi } from 'zustand/vanilla';
import { askOfRegions, type RequirementEdit, type TaperEnds } from '#app/state/edits/edit-job.ts';
import { changeRequirements, type Requirement } from '#app/state/edits/edit-requirement.ts';
import type { JobFile } from '#job/job-file.ts';
import { inDrawing, regionTargets } from './region-targets.ts';
import type { SectionLine, Session, WorkbenchState } from './workbench-state.ts';

interface Ways {
  readonly edit: (label: string, change: (job: JobFile) => JobFile) => void;
  readonly look: (change: Partial<Session>) => void;
}

export function askActions(store: StoreApi<WorkbenchState>, { edit, look }: Ways) {
  const picked = () => {
    const targets = regionTargets(store.getState());
    const { selection } = store.getState().session;
    const chosen = new Set(selection.flatMap((id) => targets.get(id) ?? []));
    return { targets: [...chosen], all: [...new Set(targets.values())] };
  };

  const askOfSelection = (change: RequirementEdit, label: string) => {
    if (store.getState().history?.present.document.unsaid?.includes('stock')) {
      return look({ notice: { text: 'Say the thickness of the sheet first.', findings: [] } });
    }
    const { targets, all } = picked();
    if (targets.length > 0) edit(label, (job) => askOfRegions(job, targets, all, change));
  };

  return {
    askOfSelection,
    /** Changes the requirements of what is picked in another way than by a figure of depth. */
    changeSelection: (change: (requirement: Requirement, job: JobFile) => Requirement, label: string) => {
      const among = picked();
      if (among.targets.length === 0) return;
      edit(label, (job) => changeRequirements(job, among, (each) => change(each, job)));
    },
    /** Depths at the two ends of a line on the sheet, or what they leave; between them it changes evenly. */
    taperAlong: (line: SectionLine, ends: TaperEnds, label: string) => {
      const state = store.getState();
      const [from, to] = [inDrawing(line.from, state), inDrawing(line.to, state)];
      askOfSelection({ taper: { from, to, ...ends } }, label);
    },
  };
}

/** Everything that can be done at the workbench, as functions on its store. */
import type { StoreApi } from 'zustand/vanilla';
import type { JobFile } from '#job/job-file.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { askOfRegions, type RequirementEdit } from './edit-job.ts';
import { closeGroup, redo, takeStep, undo } from './history.ts';
import { type LookAtDrawing, openActions } from './open-actions.ts';
import { inDrawing, regionTargets } from './region-targets.ts';
import { sheetActions } from './sheet-actions.ts';
import type {
  Flight,
  SectionHeight,
  SectionLine,
  Session,
  SheetView,
  WorkbenchState,
} from './workbench-state.ts';

type JobHistory = NonNullable<WorkbenchState['history']>;

export type SelectHow = 'only' | 'toggle' | 'add';

export type WorkbenchActions = ReturnType<typeof workbenchActions>;

export function workbenchActions(store: StoreApi<WorkbenchState>, lookAt: LookAtDrawing) {
  const look = (change: Partial<Session>) =>
    store.setState(({ session }) => ({ session: { ...session, ...change } }));
  const select = (ids: readonly string[], how: SelectHow = 'only') =>
    look({ selection: selected(store.getState().session.selection, ids, how) });

  /** What a place was marked for may be gone with the step. */
  const moveOn = (step: (history: JobHistory) => JobHistory) =>
    store.setState(({ history, session }) => {
      if (history === undefined) return {};
      const isMarked = session.flight !== undefined;
      return { history: step(history), ...(isMarked && { session: { ...session, flight: undefined } }) };
    });

  const edit = (label: string, change: (job: JobFile) => JobFile, group?: string) => {
    moveOn((history) => {
      const { document } = history.present;
      const job = change(document.job);
      const step = { label, document: { ...document, job }, ...(group === undefined ? {} : { group }) };
      return takeStep(history, step);
    });
  };

  const askOfSelection = (change: RequirementEdit, label: string) => {
    const targets = regionTargets(store.getState());
    const { selection } = store.getState().session;
    const chosen = new Set(selection.flatMap((id) => targets.get(id) ?? []));
    if (chosen.size === 0) return;
    edit(label, (job) => askOfRegions(job, [...chosen], [...new Set(targets.values())], change));
  };

  return {
    select,
    ...sheetActions(store, edit),
    edit,
    ...openActions(store, lookAt),
    notify: (text: string) => look({ notice: { text, findings: [] } }),
    askOfSelection,
    /** Depths at the left and the right end of the section; between them depth changes evenly along the cut. */
    taperAlongCut: (depths: { readonly left: number; readonly right: number }, label: string) => {
      const state = store.getState();
      const { cut } = state.session;
      if (cut === undefined) return;
      const [from, to] = [inDrawing(cut.from, state), inDrawing(cut.to, state)];
      askOfSelection({ taper: { from, to, depthFrom: depths.left, depthTo: depths.right } }, label);
    },
    endDrag: () =>
      store.setState(({ history }) => (history === undefined ? {} : { history: closeGroup(history) })),
    undo: () => moveOn(undo),
    redo: () => moveOn(redo),
    show: (view: SheetView) => look({ view }),
    readIn: (unit: ShownUnit) => look({ unit }),
    exaggerate: (exaggeration: number) => look({ exaggeration }),
    flyTo: (flight: Flight) => look({ flight }),
    cutAlong: (cut: SectionLine) => look({ cut }),
    drawHeights: (sectionHeight: SectionHeight) => look({ sectionHeight }),
    /** Past the last minute the end of the run is meant. */
    turnClock: (minute: number | undefined) => {
      const end = store.getState().derived.page?.plan?.totals.minutes ?? 0;
      look({ minute: minute === undefined || minute >= end ? undefined : Math.max(0, minute) });
    },
    dismissNotice: () => look({ notice: undefined }),
  };
}

function selected(before: readonly string[], ids: readonly string[], how: SelectHow): readonly string[] {
  if (how === 'only') return ids;
  const chosen = new Set(before);
  for (const id of ids) {
    if (how === 'toggle' && chosen.has(id)) chosen.delete(id);
    else chosen.add(id);
  }
  return [...chosen];
}

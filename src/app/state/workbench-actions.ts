/** Everything that can be done at the workbench, as functions on its store. */
import type { StoreApi } from 'zustand/vanilla';
import type { Point } from '#geometry/point.ts';
import type { Path } from '#geometry/span.ts';
import type { JobFile } from '#part/job-file.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { askOfRegions, type Wish } from './edit-job.ts';
import { closeGroup, redo, takeStep, undo } from './history.ts';
import { type LookAtDrawing, openActions } from './open-actions.ts';
import { regionTargets } from './region-targets.ts';
import type { Cut, SectionHeight, Session, SheetView, WorkbenchState } from './workbench-state.ts';

export type SelectHow = 'only' | 'toggle' | 'add';

export type WorkbenchActions = ReturnType<typeof workbenchActions>;

export function workbenchActions(store: StoreApi<WorkbenchState>, lookAt: LookAtDrawing) {
  const look = (change: Partial<Session>) =>
    store.setState(({ session }) => ({ session: { ...session, ...change } }));
  const select = (ids: readonly string[], how: SelectHow = 'only') =>
    look({ selection: selected(store.getState().session.selection, ids, how) });

  const edit = (label: string, change: (job: JobFile) => JobFile, group?: string) => {
    store.setState(({ history }) => {
      if (history === undefined) return {};
      const { document } = history.present;
      const job = change(document.job);
      const step = { label, document: { ...document, job }, ...(group === undefined ? {} : { group }) };
      return { history: takeStep(history, step) };
    });
  };

  return {
    select,
    edit,
    ...openActions(store, lookAt),
    tell: (text: string) => look({ notice: { text, findings: [] } }),
    askOfSelection: (wish: Wish, label: string) => {
      const targets = regionTargets(store.getState());
      const { selection } = store.getState().session;
      const chosen = selection.flatMap((id) => targets.get(id) ?? []);
      if (chosen.length === 0) return;
      edit(label, (job) => askOfRegions(job, chosen, [...targets.values()], wish));
    },
    endDrag: () =>
      store.setState(({ history }) => (history === undefined ? {} : { history: closeGroup(history) })),
    undo: () => store.setState(({ history }) => (history === undefined ? {} : { history: undo(history) })),
    redo: () => store.setState(({ history }) => (history === undefined ? {} : { history: redo(history) })),
    show: (view: SheetView) => look({ view }),
    readIn: (unit: ShownUnit) => look({ unit }),
    exaggerate: (exaggeration: number) => look({ exaggeration }),
    flyTo: (to: Point, outline?: readonly Path[]) => look({ flight: { to, outline } }),
    cutAlong: (cut: Cut) => look({ cut }),
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

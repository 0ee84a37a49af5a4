/** Everything that can be done at the workbench, as functions on its store. */
import type { StoreApi } from 'zustand/vanilla';
import { type DrawingTies, openActions } from '#app/state/opening/open-actions.ts';
import type { JobFile } from '#job/job-file.ts';
import { askActions } from './ask-actions.ts';
import { closeGroup, redo, takeStep, undo } from './history.ts';
import { levelActions } from './level-actions.ts';
import { lookActions } from './look-actions.ts';
import { returnedActions } from './returned-actions.ts';
import { sheetActions } from './sheet-actions.ts';
import type { OpenDocument, Session, Unsaid, WorkbenchState } from './workbench-state.ts';

type JobHistory = NonNullable<WorkbenchState['history']>;

export type SelectHow = 'only' | 'toggle' | 'add';

export type WorkbenchActions = ReturnType<typeof workbenchActions>;

export function workbenchActions(store: StoreApi<WorkbenchState>, ties: DrawingTies) {
  const look = (change: Partial<Session>) =>
    store.setState(({ session }) => ({ session: { ...session, ...change } }));
  const select = (ids: readonly string[], how: SelectHow = 'only') =>
    look({ selection: selected(store.getState().session.selection, ids, how) });

  /** What a place was marked for may be gone with the step; and a level moved before is not the last that was done. */
  const moveOn = (step: (history: JobHistory) => JobHistory) =>
    store.setState(({ history, session }) => {
      if (history === undefined) return {};
      const isOver = session.flight !== undefined || session.moved !== undefined;
      const over = { flight: undefined, moved: undefined };
      return { history: step(history), ...(isOver && { session: { ...session, ...over } }) };
    });

  const edit = (label: string, change: (job: JobFile) => JobFile, group?: string) => {
    moveOn((history) => {
      const { document } = history.present;
      const next = { ...document, job: change(document.job) };
      const step = {
        label,
        document: withSheetSaid(document, next),
        ...(group === undefined ? {} : { group }),
      };
      return takeStep(history, step);
    });
  };

  /** Says what only the engineer can, with what it makes of the job. */
  const say = (what: Unsaid, label: string, change: (job: JobFile) => JobFile) =>
    moveOn((history) => {
      const { document } = history.present;
      const unsaid = (document.unsaid ?? []).filter((each) => each !== what);
      return takeStep(history, { label, document: { ...document, job: change(document.job), unsaid } });
    });

  return {
    select,
    ...sheetActions(store, edit),
    edit,
    say,
    ...openActions(store, ties, look),
    ...returnedActions(store, look),
    ...askActions(store, { edit, look }),
    ...levelActions(store, { edit, look }),
    endDrag: () =>
      store.setState(({ history }) => (history === undefined ? {} : { history: closeGroup(history) })),
    undo: () => moveOn(undo),
    redo: () => moveOn(redo),
    ...lookActions(store, look),
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

/** A thickness typed anywhere says what the sheet is. */
function withSheetSaid(before: OpenDocument, after: OpenDocument): OpenDocument {
  const isSame =
    before.job.stock.thickness === after.job.stock.thickness || before.job.units !== after.job.units;
  if (isSame || after.unsaid?.includes('stock') !== true) return after;
  return { ...after, unsaid: after.unsaid.filter((each) => each !== 'stock') };
}

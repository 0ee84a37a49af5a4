/**
 * Opens the subject that the user turns to: requirements where regions are picked, findings where lines came back, the drawing where
 * a new one needs its edge.
 */
import type { StoreApi } from 'zustand/vanilla';
import { outlineLayers, sheetChoice } from '#app/state/edits/edit-sheet.ts';
import type { LayoutStore } from './layout-state.ts';
import type { WorkbenchState } from './workbench-state.ts';

export function followLayout(store: StoreApi<WorkbenchState>, layout: LayoutStore): void {
  store.subscribe(({ session, openJob, history }, before) => {
    const { panel } = layout.getState();
    // A panel that was folded away stays so.
    const canTurn = panel !== undefined && panel !== 'handoff';
    if (canTurn && session.selection !== before.session.selection && session.selection.length > 0) {
      layout.setState({ panel: 'requirements' });
    }
    if (session.returned !== undefined && session.returned !== before.session.returned) {
      layout.setState({ panel: 'findings', over: 'nothing' });
    }
    const isAsked = session.arrived !== undefined && session.arrived !== before.session.arrived;
    // The question stands over the sheet, which the hand-off would cover.
    if (isAsked && panel === 'handoff') layout.setState({ panel: 'findings' });
    if (openJob?.id === before.openJob?.id || before.openJob === undefined) return;
    layout.setState({ over: 'nothing' });
    const job = history?.present.document.job;
    if (job === undefined || panel === undefined) return;
    const isNew = outlineLayers(job).length === 0 && sheetChoice(job) === undefined;
    layout.setState({ panel: isNew ? 'drawing' : 'findings' });
  });
  layout.subscribe(({ theme }) => showTheme(theme));
  showTheme(layout.getState().theme);
}

function showTheme(theme: 'system' | 'light' | 'dark'): void {
  const { dataset } = document.documentElement;
  if (theme === 'system') delete dataset['theme'];
  else if (dataset['theme'] !== theme) dataset['theme'] = theme;
}

/** A drawing in whose regions no figure stands has nothing to say of them: that question falls away by itself, as no step of its own. */
import type { StoreApi } from 'zustand/vanilla';
import { depthOffers } from '#app/state/edits/depth-offers.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import type { WorkbenchState } from '#app/state/workbench-state.ts';

export function followOpening(store: StoreApi<WorkbenchState>): void {
  store.subscribe(({ derived, history }, before) => {
    const { page, shapes, isStale } = derived;
    if (history === undefined || isStale || page?.plan === undefined) return;
    if (page === before.derived.page && history === before.history) return;
    const { document } = history.present;
    const isLast = document.unsaid?.length === 1 && document.unsaid[0] === 'figures';
    if (!isLast || shapes.length === 0) return;
    const thickness = sheetThickness(document.job);
    if (depthOffers({ page, shapes, prefix: '', thickness }).length > 0) return;
    const { unsaid, ...said } = document;
    store.setState({ history: { ...history, present: { ...history.present, document: said } } });
  });
}

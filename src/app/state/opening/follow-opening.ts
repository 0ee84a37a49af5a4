/** Questions that a drawing does not raise fall away by themselves, as no step of their own: about circles inside regions, and about figures. */
import type { StoreApi } from 'zustand/vanilla';
import { depthOffers } from '#app/state/edits/depth-offers.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import type { WorkbenchState } from '#app/state/workbench-state.ts';
import { circlesOf } from './circles-inside.ts';

export function followOpening(store: StoreApi<WorkbenchState>): void {
  store.subscribe(({ derived, history }, before) => {
    const { page, shapes, isStale } = derived;
    if (history === undefined || isStale || page?.plan === undefined) return;
    if (page === before.derived.page && history === before.history) return;
    const { document } = history.present;
    const { job, unsaid: asked = [], ...said } = document;
    if (asked.length === 0 || asked.includes('unit') || asked.includes('stock') || shapes.length === 0)
      return;
    const hasCircles = asked.includes('circles') && circlesOf({ page, shapes }, job).length > 0;
    const thickness = sheetThickness(job);
    const hasFigures = hasCircles || depthOffers({ page, shapes, prefix: '', thickness }).length > 0;
    const unsaid = asked.filter((each) =>
      each === 'faces' ? true : each === 'circles' ? hasCircles : hasFigures,
    );
    if (unsaid.length === asked.length) return;
    const open = { job, ...said, ...(unsaid.length === 0 ? {} : { unsaid }) };
    store.setState({ history: { ...history, present: { ...history.present, document: open } } });
  });
}

/** Fetches the surface of the plan on show; one that comes after its plan was replaced is dropped. */
import type { StoreApi } from 'zustand/vanilla';
import type { PlanService } from '#app/worker/plan-service.ts';
import type { WorkbenchState } from './workbench-state.ts';

/** How far facets may stand off the true surface, mm: below half of the usual depth tolerance, and not to be seen. */
const TOLERANCE = 0.02;

export async function fetchRelief(store: StoreApi<WorkbenchState>, service: PlanService): Promise<void> {
  const { page } = store.getState().derived;
  if (page === undefined) return;
  try {
    const arrays = await service.relief(TOLERANCE);
    if (arrays === undefined || store.getState().derived.page !== page) return;
    store.setState(({ derived }) => ({ derived: { ...derived, relief: { arrays, of: page } } }));
  } catch (error) {
    const failure = error instanceof Error ? error.message : String(error);
    store.setState(({ derived }) => ({ derived: { ...derived, failure } }));
  }
}

/** What becomes of a drawing that came onto a plan, where it is lines that came back: nothing of it changes the job. */
import type { StoreApi } from 'zustand/vanilla';
import type { DrawingFile } from '#app/worker/plan-service.ts';
import type { Session, WorkbenchState } from './workbench-state.ts';

export function returnedActions(store: StoreApi<WorkbenchState>, look: (change: Partial<Session>) => void) {
  return {
    compareReturned: ({ name, bytes }: DrawingFile) =>
      look({ arrived: undefined, returned: { kind: 'scribe', name, bytes }, view: 'plan' }),
    leaveArrived: () => look({ arrived: undefined }),
    putReturnedAway: () =>
      store.setState(({ session, derived }) => ({
        session: { ...session, returned: undefined, flight: undefined },
        derived: { ...derived, comparison: undefined },
      })),
  };
}

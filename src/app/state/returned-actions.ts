/** What becomes of a drawing that came onto a job: its far face, or lines that came back, of which nothing changes the job. */
import type { StoreApi } from 'zustand/vanilla';
import type { DrawingFile } from '#app/worker/plan-service.ts';
import { takeStep } from './history.ts';
import { farFaceTaken } from './opening/returned-file.ts';
import type { Session, WorkbenchState } from './workbench-state.ts';

export function returnedActions(store: StoreApi<WorkbenchState>, look: (change: Partial<Session>) => void) {
  return {
    compareReturned: ({ name, bytes }: DrawingFile) =>
      look({ arrived: undefined, returned: { kind: 'scribe', name, bytes }, view: 'plan' }),
    /** As the far face of the open job: of what came that alone changes it. */
    openAsFarFace: (file: DrawingFile) => {
      const { history } = store.getState();
      if (history === undefined) return;
      const document = farFaceTaken(history.present.document, file);
      store.setState({ history: takeStep(history, { label: `far face from ${file.name}`, document }) });
      look({ arrived: undefined });
    },
    leaveArrived: () => look({ arrived: undefined }),
    putReturnedAway: () =>
      store.setState(({ session, derived }) => ({
        session: { ...session, returned: undefined, flight: undefined },
        derived: { ...derived, comparison: undefined },
      })),
  };
}

/** While stages are reviewed the sheet shows the part as it is after the one on show; planning goes on at the minute that it was left at. */
import { useEffect } from 'react';
import { useWorkbench } from '#app/views/workbench-context.ts';

/** @param minute of the run, at the end of the stage on show */
export function useStageClock(minute: number | undefined): void {
  const { actions, store } = useWorkbench();
  useEffect(() => {
    const { minute: left } = store.getState().session;
    actions.show('plan');
    return () => actions.turnClock(left);
  }, [actions, store]);
  useEffect(() => void actions.turnClock(minute), [actions, minute]);
}

/** A drawing came onto a plan: a job of its own, or lines that came back, to be held against the plan? */
import { X } from 'lucide-react';
import { IconButton } from '#app/views/controls/IconButton.tsx';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';

export function ArrivalStrip() {
  const { actions } = useWorkbench();
  const job = useDocument()?.job;
  const arrived = useWorkbenchState(({ session }) => session.arrived);
  if (arrived === undefined) return null;
  return (
    <section className="notice" role="alert" aria-label="A drawing came">
      <div className="words">
        <p>
          <strong>{arrived.name}: a new drawing, or lines that came back?</strong>{' '}
          <span className="aside">Lines are held against the plan of {job?.name}, which stays as it is.</span>
        </p>
        <p className="row">
          <button type="button" onClick={() => void actions.openAsNew([arrived])}>
            New drawing
          </button>
          <button type="button" onClick={() => actions.compareReturned(arrived)}>
            Lines that came back
          </button>
        </p>
      </div>
      <IconButton icon={X} name="Leave this file" onPress={actions.leaveArrived} />
    </section>
  );
}

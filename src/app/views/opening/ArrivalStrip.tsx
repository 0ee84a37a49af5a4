/** A drawing came onto a plan: a job of its own, or lines that came back, to be held against the plan? */
import { X } from 'lucide-react';
import { hasPlan } from '#app/state/opening/returned-file.ts';
import { IconButton } from '#app/views/controls/IconButton.tsx';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';

export function ArrivalStrip() {
  const { actions, layout } = useWorkbench();
  const job = useDocument()?.job;
  const isPlanned = useWorkbenchState(hasPlan);
  const arrived = useWorkbenchState(({ session }) => session.arrived);
  if (arrived === undefined) return null;
  return (
    <section className="notice" role="alert" aria-label="A drawing came">
      <div className="words">
        <p>
          <strong>
            {arrived.name}: a new drawing,{' '}
            {isPlanned ? 'the far face, or lines that came back' : 'or the far face'}?
          </strong>{' '}
          <span className="aside">
            The far face becomes part of {job?.name}.
            {isPlanned && ' Lines are held against its plan, which stays as it is.'}
          </span>
        </p>
        <p className="row">
          <button type="button" onClick={() => void actions.openAsNew([arrived])}>
            New drawing
          </button>
          <button
            type="button"
            onClick={() => {
              actions.openAsFarFace(arrived);
              layout.setState({ panel: 'drawing' });
            }}
          >
            Far face of {job?.name}
          </button>
          {isPlanned && (
            <button type="button" onClick={() => actions.compareReturned(arrived)}>
              Lines that came back
            </button>
          )}
        </p>
      </div>
      <IconButton icon={X} name="Leave this file" onPress={actions.leaveArrived} />
    </section>
  );
}

/** Opens the list of jobs, and says whether the job that is open is kept. */
import { useStore } from 'zustand';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';

interface JobsButtonProps {
  readonly listId: string;
  readonly isOpen: boolean;
  readonly onToggle: () => void;
}

export function JobsButton({ listId, isOpen, onToggle }: JobsButtonProps) {
  const { jobList } = useWorkbench();
  const { jobs, keeping, refusal } = useStore(jobList.state);
  const isOwn = useWorkbenchState((state) => state.openJob?.isOwn === true);
  return (
    <>
      {refusal !== undefined ? (
        <span role="alert" className="not-kept" title={refusal}>
          not kept here: save the job file
        </span>
      ) : (
        isOwn && <span className="aside keeping">{keeping === 'kept' ? 'kept' : 'keeping …'}</span>
      )}
      <button
        type="button"
        aria-expanded={isOpen}
        aria-controls={isOpen ? listId : undefined}
        onClick={() => {
          void jobList.refresh();
          onToggle();
        }}
      >
        jobs{jobs.length > 0 && ` (${jobs.length})`}
      </button>
    </>
  );
}

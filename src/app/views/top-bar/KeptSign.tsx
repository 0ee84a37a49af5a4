/** Whether the open job is kept in this browser; where nothing is kept, a warning. */
import { CloudOff, RefreshCw, Save } from 'lucide-react';
import { useStore } from 'zustand';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';

export function KeptSign() {
  const { jobList } = useWorkbench();
  const { keeping, refusal } = useStore(jobList.state);
  const isOwn = useWorkbenchState((state) => state.openJob?.isOwn === true);
  if (refusal !== undefined) {
    return (
      <span role="alert" className="not-kept" title={refusal}>
        <CloudOff size={14} aria-hidden="true" /> Not kept here: save the job file
      </span>
    );
  }
  if (!isOwn) return null;
  const isKept = keeping === 'kept';
  const Sign = isKept ? Save : RefreshCw;
  return (
    <span className="keeping" title={isKept ? 'Kept in this browser' : 'Being kept in this browser'}>
      <Sign size={14} aria-hidden="true" />
      <span className="unseen">{isKept ? 'kept' : 'keeping …'}</span>
    </span>
  );
}

/** What to know about a file just opened, or why one was not; and that planning failed, where it did. */
import { X } from 'lucide-react';
import { IconButton } from './controls/IconButton.tsx';
import { FindingList } from './FindingList.tsx';
import { useWorkbench, useWorkbenchState } from './workbench-context.ts';

export function NoticeLine() {
  const { actions } = useWorkbench();
  const notice = useWorkbenchState((state) => state.session.notice);
  const failure = useWorkbenchState((state) => state.derived.failure);
  return (
    <>
      {failure !== undefined && (
        <div className="notice failed" role="alert">
          <p className="words">
            Planning failed: {failure}. This is a fault of Isobath; the job is safe and can be saved.
          </p>
        </div>
      )}
      {notice !== undefined && (
        <div className="notice" role="alert">
          <div className="words">
            <p>{notice.text}</p>
            <FindingList findings={notice.findings} />
          </div>
          <IconButton icon={X} name="Close this notice" onPress={actions.dismissNotice} />
        </div>
      )}
    </>
  );
}

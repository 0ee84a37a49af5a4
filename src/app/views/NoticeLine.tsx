/** What to know about a file just opened, or why one was not. */
import { FindingList } from './FindingsView.tsx';
import { useWorkbench, useWorkbenchState } from './workbench-context.ts';

export function NoticeLine() {
  const { actions } = useWorkbench();
  const notice = useWorkbenchState((state) => state.session.notice);
  if (notice === undefined) return null;
  return (
    <div className="notice" role="alert">
      <p>{notice.text}</p>
      <FindingList findings={notice.findings} />
      <button type="button" onClick={actions.dismissNotice}>
        understood
      </button>
    </div>
  );
}

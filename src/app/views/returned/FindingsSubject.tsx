/** Findings: those of lines that came back, as long as they are on show, over those of the plan. */
import { FindingsPanel } from '#app/views/FindingsView.tsx';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { ReturnedView } from './ReturnedView.tsx';

export function FindingsSubject() {
  const returned = useWorkbenchState(({ session }) => session.returned);
  if (returned === undefined) return <FindingsPanel />;
  return (
    <>
      <ReturnedView file={returned} />
      <h3>Of the plan itself</h3>
      <FindingsPanel />
    </>
  );
}

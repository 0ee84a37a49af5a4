/** What sizing takes off the sheet's thickness in the plan on show, mm. */
import { useWorkbenchState } from './workbench-context.ts';

export function useSized(): number {
  const sizing = useWorkbenchState(({ derived }) => derived.page?.plan?.sizing);
  return sizing === undefined ? 0 : sizing.before.most - sizing.after.most;
}

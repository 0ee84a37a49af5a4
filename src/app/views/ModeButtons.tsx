/** Ways from planning to what comes after it. */
import { useWorkbench, useWorkbenchState } from './workbench-context.ts';

export function ModeButtons() {
  const { mode } = useWorkbench();
  const isReady = useWorkbenchState(({ derived }) => derived.page?.isWhole === true && !derived.isStale);
  const hasPlan = useWorkbenchState(({ derived }) => derived.page?.plan !== undefined);
  if (!hasPlan) return null;
  return (
    <p className="mode-buttons">
      <button type="button" disabled={!isReady} onClick={() => mode.setState({ mode: 'review', step: 0 })}>
        review the stages
      </button>
      <button type="button" disabled={!isReady} onClick={() => mode.setState({ mode: 'tank', step: 0 })}>
        at the tank
      </button>
    </p>
  );
}

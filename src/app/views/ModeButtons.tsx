/** Ways from planning to what comes after it. */
import { useBench, useWorkbench } from './workbench-context.ts';

export function ModeButtons() {
  const { mode } = useWorkbench();
  const isReady = useBench(({ derived }) => derived.page?.isWhole === true && !derived.isStale);
  const hasPlan = useBench(({ derived }) => derived.page?.plan !== undefined);
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

/** Ways from planning to what comes after it. */
import { useBench, useWorkbench } from './workbench-context.ts';

export function DeskButtons() {
  const { desk } = useWorkbench();
  const isReady = useBench(({ derived }) => derived.page?.isWhole === true && !derived.isStale);
  const hasPlan = useBench(({ derived }) => derived.page?.plan !== undefined);
  if (!hasPlan) return null;
  return (
    <p className="desk-buttons">
      <button type="button" disabled={!isReady} onClick={() => desk.setState({ desk: 'review', step: 0 })}>
        review the stages
      </button>
      <button type="button" disabled={!isReady} onClick={() => desk.setState({ desk: 'tank', step: 0 })}>
        at the tank
      </button>
    </p>
  );
}

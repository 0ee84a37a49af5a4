/** What to do next, shown where it is done while nothing is picked: with an untouched sample, with nothing required, otherwise. */
import { useWorkbenchState } from '#app/views/workbench-context.ts';

export function PickHint() {
  const isUntouchedSample = useWorkbenchState(
    ({ openJob, history }) => openJob?.isOwn === false && history?.past.length === 0,
  );
  const stages = useWorkbenchState(({ derived }) => derived.page?.plan?.stages.length);
  return (
    <div className="pick-hint">
      {isUntouchedSample && (
        <p>This is a sample, already planned. Drop your own drawing (DXF) on this window to start a job.</p>
      )}
      {stages === 0 && <p>Nothing is required yet, so the whole sheet stays as it is.</p>}
      <p>To ask a depth: click a region, type a figure, press Enter.</p>
      <ul className="aside">
        <li>Shift and click adds a region.</li>
        <li>Shift and drag draws a box round several.</li>
        <li>A level in the ladder picks all regions on it.</li>
      </ul>
    </div>
  );
}

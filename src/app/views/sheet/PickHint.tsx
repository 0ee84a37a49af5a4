/** What to do next, said where it is done while nothing is picked: with an untouched sample, with nothing asked, else. */
import { useWorkbenchState } from '#app/views/workbench-context.ts';

export function PickHint() {
  const isUntouchedSample = useWorkbenchState(
    ({ openJob, history }) => openJob?.isOwn === false && history?.past.length === 0,
  );
  const stages = useWorkbenchState(({ derived }) => derived.page?.plan?.stages.length);
  return <p className="depth-entry aside">{hintFor(isUntouchedSample, stages)}</p>;
}

function hintFor(isUntouchedSample: boolean, stages: number | undefined): string {
  if (isUntouchedSample) {
    return 'This is a sample, planned already. Drop a drawing of your own (DXF) anywhere on this window, or try the sample: click a pocket, type another depth, press Enter.';
  }
  const how =
    'click a region (Shift adds another, Shift and drag draws a box round several, a level in the ladder picks all of it), type a figure, press Enter.';
  return stages === 0
    ? `Nothing is asked yet, so all of it stays land. To ask a depth: ${how}`
    : `To ask a depth: ${how}`;
}

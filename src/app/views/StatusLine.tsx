/** What the plan is doing: made, being made (with a way to stop it), out of date or broken. */
import { counted } from '#findings/counted.ts';
import { showMinutes } from '#units/show-length.ts';
import { useDocument, useWorkbench, useWorkbenchState } from './workbench-context.ts';

export function StatusLine() {
  const { planner } = useWorkbench();
  const { page, isStale, progress: planning, looking, failure } = useWorkbenchState((state) => state.derived);
  const drawing = useDocument()?.drawing;
  const plan = page?.plan;
  const progress = looking ?? planning;
  const isUnchecked = page?.isWhole === false;
  return (
    <footer className="status-line">
      <p role="status">
        {progress !== undefined ? (
          <>
            <progress
              value={progress.share}
              aria-label={`Share of ${looking === undefined ? 'the plan' : looking.name} done`}
            />{' '}
            {looking === undefined ? progress.what : `${looking.name}: ${looking.what}`}
          </>
        ) : (
          statusWords(plan?.stages.length, isStale && drawing !== undefined)
        )}
        {plan !== undefined && progress === undefined && (
          <span className="aside">
            {' '}
            {counted(plan.regions.length, 'region')}, {showMinutes(plan.totals.minutes)} immersed,{' '}
            {isUnchecked ? 'not checked yet' : `planned in ${page?.seconds.toFixed(2)} s`}
          </span>
        )}
      </p>
      {progress !== undefined && (
        <button type="button" onClick={looking === undefined ? planner.cancel : planner.stopLooking}>
          {looking === undefined ? 'stop planning' : 'do not open it'}
        </button>
      )}
      {(isStale || isUnchecked) && progress === undefined && drawing !== undefined && (
        <button type="button" onClick={planner.replan}>
          plan again
        </button>
      )}
      {failure !== undefined && (
        <p role="alert" className="failure">
          The plan broke off: {failure}. That is a fault of Isobath’s; the job is safe and can be saved.
        </p>
      )}
      <a className="help" href="./help.html" target="_blank" rel="noopener">
        how it works
      </a>
    </footer>
  );
}

function statusWords(stages: number | undefined, isStale: boolean): string {
  if (isStale) return 'Out of date.';
  if (stages === undefined) return 'No plan yet.';
  return stages === 1 ? '1 stage.' : `${stages} stages.`;
}

/** The run in a line: stages, minutes, mass; or how far planning has come, with a way to stop it. Announced to screen readers as it changes. */
import { Button } from 'react-aria-components';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { PlannedPage } from '#app/worker/planned-page.ts';
import { counted } from '#findings/counted.ts';

export function RunLine() {
  const { planner } = useWorkbench();
  const { page, isStale, progress: planning, looking } = useWorkbenchState((state) => state.derived);
  const hasDrawing = useDocument()?.drawing !== undefined;
  const progress = looking ?? planning;
  if (progress !== undefined) {
    const what = looking === undefined ? progress.what : `${looking.name}: ${looking.what}`;
    return (
      <div className="run-line">
        <p role="status" className="busy">
          <progress
            value={progress.share}
            aria-label={`Share of ${looking === undefined ? 'the plan' : looking.name} done`}
          />{' '}
          {what}
        </p>
        <Button onPress={looking === undefined ? planner.cancel : planner.stopLooking}>
          {looking === undefined ? 'Stop planning' : 'Do not open it'}
        </Button>
      </div>
    );
  }
  const isUnchecked = page?.isWhole === false;
  return (
    <div className="run-line">
      <p role="status">{isStale && hasDrawing ? 'Out of date.' : <RunWords />}</p>
      {(isStale || isUnchecked) && hasDrawing && <Button onPress={planner.replan}>Plan again</Button>}
    </div>
  );
}

/** "3 stages 101.0 min 0.10 kg off". */
export function RunWords() {
  const page = useWorkbenchState(({ derived }) => derived.page);
  const mass = page?.results?.totals.removedMass;
  const plan = page?.plan;
  if (page === undefined || plan === undefined) return <span className="unseen">No plan yet.</span>;
  const stages = plan.stages.length;
  const end = endWords(page);
  return (
    <>
      <span>
        <b>{stages}</b> {stages === 1 ? 'stage' : 'stages'}
      </span>{' '}
      <span>
        <b>{plan.totals.minutes.toFixed(1)}</b>&nbsp;min
      </span>{' '}
      {typeof mass === 'number' && (
        <span>
          <b>{(mass / GRAMS).toFixed(2)}</b>&nbsp;kg off
        </span>
      )}
      <span className="unseen">
        , {counted(plan.regions.length, 'region')}, {end}
      </span>
    </>
  );
}

function endWords({ isJudged, isWhole, results, seconds }: PlannedPage): string {
  if (!isJudged) return 'not checked yet';
  if (!isWhole) return 'files not written yet';
  // Shown without what no sheet could give.
  return results === undefined ? 'stopped' : `planned in ${seconds.toFixed(2)} s`;
}

const GRAMS = 1000;

/** What the list of jobs shows of the plan on show. */

import { questionsLeft } from '#app/state/opening/opening-steps.ts';
import { partPicture } from '#app/state/part-picture.ts';
import { standingOf } from '#app/state/plan-standing.ts';
import type { WorkbenchState } from '#app/state/workbench-state.ts';
import type { KeptPlan } from './kept-job.ts';

/** Undefined while there is none, or it is not checked to the end, or the job has gone on meanwhile. */
export function planToKeep({
  derived,
  history,
}: Pick<WorkbenchState, 'derived' | 'history'>): KeptPlan | undefined {
  const { page, isStale, progress } = derived;
  const document = history?.present.document;
  if (
    page?.plan === undefined ||
    !page.isWhole ||
    isStale ||
    progress !== undefined ||
    document?.drawing === undefined
  )
    return undefined;
  const { plan } = page;
  return {
    standing: standingOf(derived, true, questionsLeft(document)),
    stages: plan.stages.length,
    minutes: plan.totals.minutes,
    picture: partPicture(page.faces?.near ?? plan),
  };
}

/** The plan is not the one that was reviewed: what is another, and a way to begin again. */
import { useMemo } from 'react';
import { inLabels } from '#app/state/field-labels.ts';
import { startOver } from '#app/state/review-draft.ts';
import { useMode, useWorkbench } from '#app/views/workbench-context.ts';
import { changesSince } from '#run/review.ts';

const MOST = 40;

export function ReviewChanges({ planText }: { readonly planText: string | undefined }) {
  const { mode } = useWorkbench();
  const draft = useMode((state) => state.draft);
  const reviewed = draft.planText;
  const changes = useMemo(
    () => (reviewed === undefined || planText === undefined ? [] : changesSince(reviewed, planText)),
    [reviewed, planText],
  );
  const by = draft.reviewer === '' ? '' : ` by ${draft.reviewer}`;
  return (
    <section className="review-changes" aria-labelledby="review-changes-heading">
      <h2 id="review-changes-heading">Changed since it was reviewed</h2>
      <p>
        {draft.checked.length === 1 ? '1 stage was' : `${draft.checked.length} stages were`} ticked{by} on
        another plan. What was ticked there does not count for this one.
      </p>
      <p className="aside">On the sheet: solid, the lines of this plan; dashed, where they were.</p>
      <ul>
        {changes.slice(0, MOST).map((change) => (
          <li key={change}>{inLabels(change)}</li>
        ))}
      </ul>
      {changes.length > MOST && <p>and {changes.length - MOST} more</p>}
      <button
        type="button"
        onClick={() => planText !== undefined && mode.setState({ draft: startOver(draft, planText) })}
      >
        review this plan
      </button>
    </section>
  );
}

/** The plan is not the one that was reviewed: what is another, and a way to begin again. */
import { useMemo } from 'react';
import { startOver } from '#app/state/review-draft.ts';
import { useMode, useWorkbench } from '#app/views/workbench-context.ts';
import { labelOf } from '#job/field-labels.ts';
import { changesSince, type SinceReview } from '#run/review.ts';
import { NoticeText } from './NoticeText.tsx';

const MOST = 40;
const NONE: SinceReview = { said: [], findings: [] };

export function ReviewChanges({ planText }: { readonly planText: string | undefined }) {
  const { mode } = useWorkbench();
  const draft = useMode((state) => state.draft);
  const reviewed = draft.planText;
  const { said, findings } = useMemo(
    () =>
      reviewed === undefined || planText === undefined
        ? NONE
        : changesSince(reviewed, planText, (path) => `“${labelOf(path)}”`),
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
        {said.slice(0, MOST).map((change) => (
          <li key={change}>{change}</li>
        ))}
      </ul>
      {said.length > MOST && <p>and {said.length - MOST} more</p>}
      {findings.length > 0 && <NoticeText text="The two plans can’t be compared." findings={findings} />}
      <button
        type="button"
        onClick={() => planText !== undefined && mode.setState({ draft: startOver(draft, planText) })}
      >
        review this plan
      </button>
    </section>
  );
}

/** What the review comes to: which plan, how much of it was ticked, by whom; saved as a file, and opened again. */
import { useMemo, useRef } from 'react';
import { isOfOtherPlan } from '#app/state/review-draft.ts';
import { NoticeText } from '#app/views/review/NoticeText.tsx';
import { saveBytes } from '#app/views/save-bytes.ts';
import { useDocument, useMode, useWorkbench } from '#app/views/workbench-context.ts';
import { planHash, reviewText } from '#run/review.ts';
import type { ReviewNotice } from './use-open-review.ts';

interface ReviewRecordProps {
  readonly stages: number;
  readonly planText: string | undefined;
  readonly open: (files: Iterable<File>) => Promise<void>;
  readonly notice: ReviewNotice | undefined;
}

export function ReviewRecord({ stages, planText, open, notice }: ReviewRecordProps) {
  const { mode } = useWorkbench();
  const draft = useMode((state) => state.draft);
  const jobFileName = useDocument()?.jobFileName ?? 'plan';
  const picker = useRef<HTMLInputElement>(null);
  const hash = useMemo(() => (planText === undefined ? undefined : planHash(planText)), [planText]);
  const isOther = isOfOtherPlan(draft, planText);
  const checked = isOther ? 0 : draft.checked.length;
  const reviewer = draft.reviewer.trim();
  const save = () => {
    if (planText === undefined) return;
    const { remarks, checked: numbers } = draft;
    const text = reviewText({ reviewer, date: today(), checked: numbers, remarks, planText });
    const name = jobFileName.replace(/(\.job)?\.json$/i, '.review.json');
    saveBytes({ name, mime: 'application/json', bytes: new TextEncoder().encode(text) });
  };
  return (
    <section className="review-record" aria-labelledby="review-record-heading">
      <h2 id="review-record-heading">Record</h2>
      <p>
        <strong>
          {checked} of {stages}
        </strong>{' '}
        stages ticked
        {hash !== undefined && (
          <>
            {' '}
            on plan{' '}
            <code title={hash} className="hash">
              {hash.slice(0, 16)}…
            </code>
          </>
        )}
      </p>
      <label className="reviewer">
        Reviewer
        <input
          value={draft.reviewer}
          autoComplete="name"
          maxLength={200}
          onChange={({ target }) => mode.setState({ draft: { ...draft, reviewer: target.value } })}
        />
      </label>
      <p className="row">
        <button type="button" disabled={planText === undefined || isOther || reviewer === ''} onClick={save}>
          save the review
        </button>
        <button type="button" onClick={() => picker.current?.click()}>
          open a review
        </button>
        <input
          ref={picker}
          type="file"
          hidden
          accept=".json"
          aria-label="Review file"
          onChange={async ({ target }) => {
            if (target.files !== null) await open(target.files);
            target.value = '';
          }}
        />
      </p>
      {notice !== undefined && <NoticeText {...notice} />}
      <p className="aside">
        A typed name is no signature; the site’s own procedure says who may release a plan.
      </p>
    </section>
  );
}

/** By the reviewer's own calendar. */
function today(): string {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

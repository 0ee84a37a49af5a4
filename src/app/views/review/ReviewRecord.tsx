/** Who reviews, which plan it is, and a way to open a review that was saved. */
import { useMemo, useRef } from 'react';
import { NoticeText } from '#app/views/review/NoticeText.tsx';
import { useMode, useWorkbench } from '#app/views/workbench-context.ts';
import { sha256Of } from '#run/sha256-of.ts';
import type { ReviewNotice } from './use-open-review.ts';

interface ReviewRecordProps {
  readonly planText: string | undefined;
  readonly open: (files: Iterable<File>) => Promise<void>;
  readonly notice: ReviewNotice | undefined;
}

export function ReviewRecord({ planText, open, notice }: ReviewRecordProps) {
  const { mode, layout } = useWorkbench();
  const draft = useMode((state) => state.draft);
  const picker = useRef<HTMLInputElement>(null);
  const hash = useMemo(() => (planText === undefined ? undefined : sha256Of(planText)), [planText]);
  return (
    <section aria-labelledby="review-record-heading">
      <h2 id="review-record-heading">Record</h2>
      {hash !== undefined && (
        <p className="aside">
          Plan{' '}
          <code title={hash} className="hash">
            {hash.slice(0, 16)}…
          </code>
        </p>
      )}
      <label className="reviewer">
        Reviewer
        <input
          value={draft.reviewer}
          autoComplete="name"
          maxLength={200}
          onChange={({ target }) => {
            mode.setState({ draft: { ...draft, reviewer: target.value } });
            layout.setState({ reviewer: target.value });
          }}
        />
      </label>
      <p className="row">
        <button type="button" onClick={() => picker.current?.click()}>
          Open a review
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

/** The bar over the review: how much of it is done, its keys, and the way to save it. An incomplete record asks before it is saved. */

import { ArrowLeft, Printer } from 'lucide-react';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { isOfOtherPlan } from '#app/state/review-draft.ts';
import { focusControl } from '#app/views/focus-control.ts';
import { ShownUnitChoice } from '#app/views/ShownUnitChoice.tsx';
import { saveBytes } from '#app/views/save-bytes.ts';
import { useDocument, useMode, useWorkbench } from '#app/views/workbench-context.ts';
import { reviewText } from '#run/review.ts';
import { twoDigits } from '#units/two-digits.ts';
import { IncompleteQuestion } from './IncompleteQuestion.tsx';

interface ReviewBarProps {
  readonly stages: number;
  readonly planText: string | undefined;
}

export function ReviewBar({ stages, planText }: ReviewBarProps) {
  const { mode } = useWorkbench();
  const draft = useMode((state) => state.draft);
  const document = useDocument();
  const [isAsking, setAsking] = useState(false);
  const isOther = isOfOtherPlan(draft, planText);
  const checked = isOther ? 0 : draft.checked.length;
  const reviewer = draft.reviewer.trim();
  const isNameless = !isOther && reviewer === '';
  const save = () => {
    if (planText === undefined) return;
    const { remarks, checked: numbers } = draft;
    const text = reviewText({ reviewer, date: today(), checked: numbers, remarks, planText });
    const name = (document?.jobFileName ?? 'plan').replace(/(\.job)?\.json$/i, '.review.json');
    saveBytes({ name, mime: 'application/json', bytes: new TextEncoder().encode(text) });
  };
  return (
    <header className="review-head">
      <Button
        className="plain"
        aria-label="Back to planning"
        onPress={() => mode.setState({ mode: 'planning' })}
      >
        <ArrowLeft size={16} aria-hidden="true" />
      </Button>
      <h1>Review</h1>
      <span className="aside job-called">{document?.job.name}</span>
      <span className="review-record">
        <strong>
          {checked} of {stages}
        </strong>{' '}
        stages ticked
      </span>
      <span className="gap" />
      <span className="aside keys">
        <kbd>↑</kbd> <kbd>↓</kbd> stage <kbd>Space</kbd> tick
      </span>
      <ShownUnitChoice />
      <Button className="plain print" onPress={() => window.print()}>
        <Printer size={16} aria-hidden="true" /> Print
      </Button>
      {isOther && <span className="aside">It is of another plan</span>}
      {isNameless && (
        <Button className="plain go" onPress={() => void focusControl('Reviewer')}>
          Needs a reviewer’s name
        </Button>
      )}
      <Button
        isDisabled={planText === undefined || isOther || reviewer === ''}
        onPress={() => (checked < stages ? setAsking(true) : save())}
      >
        Save the review
      </Button>
      <IncompleteQuestion
        isOpen={isAsking}
        checked={checked}
        stages={stages}
        onSave={save}
        onClose={() => setAsking(false)}
      />
    </header>
  );
}

/** By the reviewer's own calendar. */
function today(): string {
  const now = new Date();
  return `${now.getFullYear()}-${twoDigits(now.getMonth() + 1)}-${twoDigits(now.getDate())}`;
}

/**
 * The review of a plan: stage by stage in the order of the run, each with its own lines alone on the sheet. Nothing here can
 * change the job.
 */
import { type DragEvent, useEffect, useMemo, useState } from 'react';
import { isOfOtherPlan, toggleCheck } from '#app/state/review-draft.ts';
import { stageSteps } from '#app/state/stage-steps.ts';
import { BrokenView } from '#app/views/BrokenView.tsx';
import { FindingsView } from '#app/views/FindingsView.tsx';
import { SectionView } from '#app/views/section/SectionView.tsx';
import { usePlanText } from '#app/views/use-plan-text.ts';
import { useDocument, useMode, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Point } from '#geometry/point.ts';
import { Remarks } from './Remarks.tsx';
import { ReviewChanges } from './ReviewChanges.tsx';
import { ReviewRecord } from './ReviewRecord.tsx';
import { ReviewSheet } from './ReviewSheet.tsx';
import { ReviewStages } from './ReviewStages.tsx';
import { reviewKey } from './review-keys.ts';
import { useOpenReview } from './use-open-review.ts';
import './review.css';

export function ReviewView() {
  const { actions, mode } = useWorkbench();
  const job = useDocument()?.job;
  const plan = useWorkbenchState(({ derived }) => derived.page?.plan);
  const planText = usePlanText();
  const { step: wanted, draft } = useMode((state) => state);
  const [place, setPlace] = useState<Point>();
  const { open, notice } = useOpenReview();
  const steps = useMemo(() => (plan === undefined ? [] : stageSteps(plan)), [plan]);
  const index = Math.min(wanted, steps.length - 1);
  const step = steps[index];

  useEffect(() => actions.show('plan'), [actions]);
  useEffect(() => actions.turnClock(step?.to), [actions, step]);
  useEffect(() => {
    const go = (to: number) => {
      if (to < 0 || to >= steps.length) return;
      setPlace(undefined);
      mode.setState({ step: to });
    };
    const onKeyDown = (event: KeyboardEvent) => {
      const meant = reviewKey(event);
      if (meant === undefined) return;
      event.preventDefault();
      if (meant !== 'tick') return go(index + meant);
      if (step === undefined || planText === undefined) return;
      mode.setState({ draft: toggleCheck(mode.getState().draft, step.stage.number, planText) });
    };
    document.addEventListener('keydown', onKeyDown);
    return () => document.removeEventListener('keydown', onKeyDown);
  }, [mode, steps, index, step, planText]);

  const onDrop = async (event: DragEvent) => {
    event.preventDefault();
    await open(event.dataTransfer.files);
  };
  if (step === undefined) return null;
  const isBehind = isOfOtherPlan(draft, planText);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a review may be dropped anywhere; the open button does the same by key
    <div className="review" onDragOver={(event) => event.preventDefault()} onDrop={onDrop}>
      <header className="review-head">
        <h1>Review</h1>
        <p>
          <strong>{job?.name}</strong> <span className="aside">nothing here changes the job</span>
        </p>
        <button type="button" onClick={() => mode.setState({ mode: 'planning' })}>
          back to planning
        </button>
      </header>
      <ReviewStages steps={steps} index={index} planText={planText} />
      <main className="middle">
        <BrokenView name="The sheet">
          <ReviewSheet stage={step.stage} place={place} onPlace={setPlace} />
        </BrokenView>
        <BrokenView name="The section">
          <SectionView />
        </BrokenView>
      </main>
      <aside className="review-side" aria-label="Findings, remarks and record">
        {isBehind && <ReviewChanges planText={planText} />}
        <FindingsView />
        <Remarks stage={step.stage} place={place} setPlace={setPlace} planText={planText} />
        <ReviewRecord stages={steps.length} planText={planText} open={open} notice={notice} />
      </aside>
    </div>
  );
}

/**
 * The review of a plan: stage by stage in the order of the run, each with its own lines alone on the sheet. Nothing here can
 * change the job.
 */
import { Check } from 'lucide-react';
import { type DragEvent, useCallback, useEffect, useMemo, useState } from 'react';
import { facesToLookAt } from '#app/state/faces-looked-at.ts';
import { isOfOtherPlan, toggleCheck } from '#app/state/review-draft.ts';
import { stageSteps } from '#app/state/stage-steps.ts';
import { BrokenView } from '#app/views/BrokenView.tsx';
import { FindingsView } from '#app/views/FindingsView.tsx';
import { SectionView } from '#app/views/section/SectionView.tsx';
import { usePlanText } from '#app/views/use-plan-text.ts';
import { useMode, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Point } from '#geometry/point.ts';
import { Remarks } from './Remarks.tsx';
import { ReviewBar } from './ReviewBar.tsx';
import { ReviewChanges } from './ReviewChanges.tsx';
import { ReviewRecord } from './ReviewRecord.tsx';
import { ReviewSheet } from './ReviewSheet.tsx';
import { ReviewStages } from './ReviewStages.tsx';
import { reviewKey } from './review-keys.ts';
import { StageFacts } from './StageFacts.tsx';
import { useOpenReview } from './use-open-review.ts';
import { useRecordedLook } from './use-recorded-look.ts';
import { useStageClock } from './use-stage-clock.ts';
import { useTopAt } from './use-top-at.ts';
import './review.css';

export function ReviewView() {
  const { actions, mode, layout } = useWorkbench();
  const plan = useWorkbenchState(({ derived }) => derived.page?.plan);
  const faces = useWorkbenchState(({ derived }) => derived.page?.faces);
  const planText = usePlanText();
  const { step: wanted, draft } = useMode((state) => state);
  const [place, setPlace] = useState<Point>();
  const { open, notice } = useOpenReview();
  const steps = useMemo(() => (plan === undefined ? [] : stageSteps(plan)), [plan]);
  const index = Math.min(wanted, steps.length - 1);
  const step = steps[index];

  useStageClock(step?.to);
  const side = useTopAt(index);
  useRecordedLook(step?.stage.number);
  useEffect(() => {
    const { draft: now } = mode.getState();
    const { reviewer } = layout.getState();
    if (now.reviewer === '' && reviewer !== '') mode.setState({ draft: { ...now, reviewer } });
  }, [mode, layout]);

  const go = useCallback(
    (to: number) => {
      if (to < 0 || to >= steps.length) return;
      setPlace(undefined);
      mode.setState({ step: to });
    },
    [mode, steps],
  );
  /** Ticks a stage, or takes the tick back; after a tick the next stage is shown. */
  const tick = useCallback(
    (at: number) => {
      const number = steps[at]?.stage.number;
      if (number === undefined || planText === undefined) return;
      const { draft: before, looks } = mode.getState();
      const [unseen] = facesToLookAt(number, looks, faces);
      if (unseen !== undefined && !before.checked.includes(number)) {
        if (at === index) actions.turnOver(unseen);
        return go(at);
      }
      const next = toggleCheck(before, number, planText);
      mode.setState({ draft: next });
      go(next.checked.includes(number) && at + 1 < steps.length ? at + 1 : at);
    },
    [actions, mode, steps, planText, go, index, faces],
  );
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const meant = reviewKey(event);
      if (meant === undefined) return;
      event.preventDefault();
      if (meant === 'tick') tick(index);
      else if (meant !== 'held') go(index + meant);
    };
    document.addEventListener('keydown', onKeyDown);
    return () => document.removeEventListener('keydown', onKeyDown);
  }, [index, go, tick]);

  const onDrop = async (event: DragEvent) => {
    event.preventDefault();
    await open(event.dataTransfer.files);
  };
  if (step === undefined) return null;
  const isBehind = isOfOtherPlan(draft, planText);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a review may be dropped anywhere; the open button does the same by key
    <div className="review" onDragOver={(event) => event.preventDefault()} onDrop={onDrop}>
      <ReviewBar stages={steps.length} planText={planText} />
      <ReviewStages steps={steps} index={index} planText={planText} onGo={go} onTick={tick} />
      <main className="middle">
        <BrokenView name="The sheet">
          <ReviewSheet stage={step.stage} place={place} onPlace={setPlace} />
        </BrokenView>
        <div className="review-foot">
          <BrokenView name="The section">
            <SectionView />
          </BrokenView>
        </div>
      </main>
      <aside className="review-side" aria-label="Stage, findings, remarks and record">
        <div className="review-scroll" ref={side}>
          {isBehind && <ReviewChanges planText={planText} />}
          <StageFacts step={step} />
          <FindingsView />
          <Remarks stage={step.stage} place={place} setPlace={setPlace} planText={planText} />
          <ReviewRecord planText={planText} open={open} notice={notice} />
        </div>
        <p className="stage-right">
          <TickButton number={step.stage.number} isBehind={isBehind} onPress={() => tick(index)} />
        </p>
      </aside>
    </div>
  );
}

interface TickButtonProps {
  readonly number: number;
  readonly isBehind: boolean;
  readonly onPress: () => void;
}

function TickButton({ number, isBehind, onPress }: TickButtonProps) {
  const isTicked = useMode((state) => state.draft.checked.includes(number));
  return (
    <button type="button" className={isTicked ? '' : 'main'} disabled={isBehind} onClick={onPress}>
      <Check size={16} aria-hidden="true" />
      {isTicked && !isBehind ? `Stage ${number} is ticked: take it back` : `Stage ${number} is right`}
      <kbd>Space</kbd>
    </button>
  );
}

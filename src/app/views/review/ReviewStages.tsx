/** The stages in the order of the run, each to be looked at and then ticked. One that was not on show yet can't be. */
import { useEffect, useRef } from 'react';
import { facesToLookAt } from '#app/state/faces-looked-at.ts';
import { isOfOtherPlan } from '#app/state/review-draft.ts';
import type { StageStep } from '#app/state/stage-steps.ts';
import { inkOn } from '#app/views/ink-on.ts';
import { StageMark } from '#app/views/StageMark.tsx';
import { useMode, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { SheetSide } from '#job/job.ts';
import { showLength, showMinutes } from '#units/show-length.ts';

interface ReviewStagesProps {
  readonly steps: readonly StageStep[];
  readonly index: number;
  readonly planText: string | undefined;
  readonly onGo: (index: number) => void;
  readonly onTick: (index: number) => void;
}

export function ReviewStages({ steps, index, planText, onGo, onTick }: ReviewStagesProps) {
  const draft = useMode((state) => state.draft);
  const looks = useMode((state) => state.looks);
  const faces = useWorkbenchState(({ derived }) => derived.page?.faces);
  const list = useRef<HTMLOListElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the focus goes along with the stage on show
  useEffect(() => {
    const hadFocus = document.activeElement;
    const isFree = hadFocus === document.body || hadFocus?.closest('.review-stages') !== null;
    if (isFree) list.current?.querySelector<HTMLElement>('[aria-current]')?.focus();
  }, [index]);
  const isOther = isOfOtherPlan(draft, planText);
  return (
    <nav className="review-stages" aria-labelledby="review-stages-heading">
      <h2 id="review-stages-heading">Stages, in the order of the run</h2>
      <ol ref={list}>
        {steps.map((step, at) => {
          const isTicked = !isOther && draft.checked.includes(step.stage.number);
          const unseen = facesToLookAt(step.stage.number, looks, faces);
          const isSeen = unseen.length === 0 || isTicked;
          return (
            <li key={step.stage.number} className={at === index ? 'on-show' : undefined}>
              <StageButton step={step} isShown={at === index} onPress={() => onGo(at)} />
              <label className={isSeen ? 'tick' : 'tick unseen-yet'}>
                <span>{isTicked ? 'right' : seenWords(unseen, at === index)}</span>
                <input
                  type="checkbox"
                  aria-label={`stage ${step.stage.number} is in order`}
                  checked={isTicked}
                  disabled={planText === undefined || isOther || !isSeen}
                  onChange={() => onTick(at)}
                />
              </label>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}

function seenWords(unseen: readonly SheetSide[], isShown: boolean): string {
  if (isShown) return unseen.length === 0 ? 'shown' : `${unseen[0]} face next`;
  return unseen.length === 0 ? 'seen' : 'not seen';
}

interface StageButtonProps {
  readonly step: StageStep;
  readonly isShown: boolean;
  readonly onPress: () => void;
}

function StageButton({ step: { stage }, isShown, onPress }: StageButtonProps) {
  const unit = useWorkbenchState((state) => state.session.unit);
  return (
    <button
      type="button"
      className="review-stage"
      aria-current={isShown ? 'step' : undefined}
      onClick={onPress}
    >
      <span className="chip" style={{ background: stage.color, color: inkOn(stage.color) }}>
        <span className="number">{stage.number}</span>
        <StageMark stage={stage.number} />
      </span>
      <span className="figures">
        <span className="unseen">Stage {stage.number}, </span>
        <strong>{showMinutes(stage.minutes)}</strong>
        <span className="aside">
          {showLength(stage.etch, unit)}, to level {showLength(stage.level, unit)}
        </span>
      </span>
    </button>
  );
}

/** The stages in the order of the run, each to be looked at and ticked; the one on show tells all of itself. */

import { useEffect, useRef } from 'react';
import { isOfOtherPlan, toggleCheck } from '#app/state/review-draft.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import type { StageStep } from '#app/state/stage-steps.ts';
import { HeadRow } from '#app/views/HeadRow.tsx';
import { inkOn } from '#app/views/ink-on.ts';
import { StageMark } from '#app/views/StageMark.tsx';
import { useDocument, useMode, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { showLength, showMinutes } from '#units/show-length.ts';

interface ReviewStagesProps {
  readonly steps: readonly StageStep[];
  readonly index: number;
  readonly planText: string | undefined;
}

export function ReviewStages({ steps, index, planText }: ReviewStagesProps) {
  const { mode } = useWorkbench();
  const draft = useMode((state) => state.draft);
  const unit = useWorkbenchState((state) => state.session.unit);
  const list = useRef<HTMLOListElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the focus goes along with the stage on show
  useEffect(() => {
    const hadFocus = document.activeElement;
    const isFree = hadFocus === document.body || hadFocus?.classList.contains('review-stage') === true;
    if (isFree) list.current?.querySelector<HTMLElement>('[aria-current]')?.focus();
  }, [index]);
  const isOther = isOfOtherPlan(draft, planText);
  return (
    <section className="review-stages" aria-labelledby="review-stages-heading">
      <h2 id="review-stages-heading">Stages, in the order of the run</h2>
      <p className="aside">Arrow keys go from stage to stage, the space bar ticks.</p>
      <ol ref={list}>
        {steps.map((step, at) => (
          <li key={step.stage.number} className={at === index ? 'on-show' : undefined}>
            <button
              type="button"
              className="review-stage"
              aria-current={at === index ? 'step' : undefined}
              onClick={() => mode.setState({ step: at })}
            >
              <span className="chip" style={{ background: step.stage.color, color: inkOn(step.stage.color) }}>
                <span className="number">{step.stage.number}</span>
                <StageMark stage={step.stage.number} />
              </span>
              <span>
                <span className="unseen">Stage {step.stage.number}, </span>
                to {showLength(step.stage.level, unit)}, {showMinutes(step.stage.minutes)}
              </span>
            </button>
            <label className="tick">
              <input
                type="checkbox"
                checked={!isOther && draft.checked.includes(step.stage.number)}
                disabled={planText === undefined || isOther}
                onChange={() =>
                  planText !== undefined &&
                  mode.setState({ draft: toggleCheck(draft, step.stage.number, planText) })
                }
              />
              <span className="unseen">stage {step.stage.number} is </span>in order
            </label>
            {at === index && <StageFacts step={step} />}
          </li>
        ))}
      </ol>
    </section>
  );
}

function StageFacts({ step }: { readonly step: StageStep }) {
  const job = useDocument()?.job;
  const unit = useWorkbenchState((state) => state.session.unit);
  const { stage, bare, from, to, floors } = step;
  const thickness = job === undefined ? 0 : sheetThickness(job);
  const { sealed, regions, lines } = stage;
  return (
    <div className="stage-facts" role="status">
      <dl>
        <dt>Peel</dt>
        <dd>
          inside {lines.length === 1 ? 'one line' : `${lines.length} lines`}, to free {listOf(regions)}
        </dd>
        <dt>Bare</dt>
        <dd>
          {bare.length === 1 ? 'piece' : 'pieces'} {listOf(bare.map(String))}
        </dd>
        <dt>Sealed</dt>
        <dd>
          {sealed.length === 0
            ? `nothing${floors.length > 0 ? ' any more' : ': each stage has a coat of its own'}`
            : `${sealed.length === 1 ? 'line of stage' : 'lines of stages'} ${listOf(sealed.map(String))}`}
        </dd>
        <dt>Bath</dt>
        <dd>
          {showMinutes(stage.minutes)}, from {from.toFixed(1)} to {to.toFixed(1)} of the run
        </dd>
      </dl>
      {floors.length > 0 && (
        <table>
          <caption>Etched so far</caption>
          <HeadRow columns={['floors of', 'before', 'after', 'leaves']} />
          <tbody>
            {floors.map(({ stage: number, before, after }) => (
              <tr key={number}>
                <th scope="row">stage {number}</th>
                <td>{showLength(before, unit)}</td>
                <td>{showLength(after, unit)}</td>
                <td>{showLength(thickness - after, unit)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </div>
  );
}

const MOST_NAMES = 6;

function listOf(names: readonly string[]): string {
  if (names.length <= MOST_NAMES) return names.join(', ');
  return `${names[0]} to ${names.at(-1)} (${names.length})`;
}

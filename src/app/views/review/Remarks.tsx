/** Remarks, each about a stage and, where it has one, a place on the sheet. */
import { type FormEvent, useState } from 'react';
import { drawingOrigin, onSheet } from '#app/state/region-targets.ts';
import { addRemark, isOfOtherPlan, removeRemark } from '#app/state/review-draft.ts';
import { useMode, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Point } from '#geometry/point.ts';
import { movePoint } from '#geometry/spans/move-spans.ts';
import type { ShownStage } from '#job/formats/plan-file.ts';
import { lengthFigure } from '#units/show-length.ts';

interface RemarksProps {
  readonly stage: ShownStage;
  readonly place: Point | undefined;
  readonly setPlace: (place: Point | undefined) => void;
  readonly planText: string | undefined;
}

const MOST_LETTERS = 2000;
/** mm: a place is pointed at by hand. */
const PLACES = 2;

/** In the drawing's own frame, as the record has it. */
function pointed(place: Point, origin: Point): [number, number] {
  const { x, y } = movePoint(place, origin);
  return [Number(x.toFixed(PLACES)), Number(y.toFixed(PLACES))];
}

export function Remarks({ stage, place, setPlace, planText }: RemarksProps) {
  const { actions, mode } = useWorkbench();
  const draft = useMode((state) => state.draft);
  const unit = useWorkbenchState((state) => state.session.unit);
  const [text, setText] = useState('');
  const origin = useWorkbenchState(drawingOrigin);
  const words = ({ x, y }: Point) => `x ${lengthFigure(x, unit)}  y ${lengthFigure(y, unit)} ${unit}`;
  const canAdd = planText !== undefined && !isOfOtherPlan(draft, planText);
  const add = (event: FormEvent) => {
    event.preventDefault();
    if (planText === undefined || text.trim() === '') return;
    const remark = { stage: stage.number, ...(place && { at: pointed(place, origin) }), text: text.trim() };
    mode.setState({ draft: addRemark(draft, remark, planText) });
    setText('');
    setPlace(undefined);
  };
  return (
    <section className="remarks" aria-labelledby="remarks-heading">
      <h2 id="remarks-heading">Remarks</h2>
      <ol>
        {draft.remarks.map((remark, index) => (
          <li key={`${index.toString()} ${remark.text}`}>
            <button
              type="button"
              className="go"
              onClick={() => {
                mode.setState({ step: remark.stage - 1 });
                if (remark.at !== undefined) actions.flyTo({ to: onSheet(remark.at, origin) });
              }}
            >
              {index + 1}, stage {remark.stage}
            </button>{' '}
            {remark.text}
            <button
              type="button"
              className="away"
              aria-label={`Take remark ${index + 1} away`}
              onClick={() => mode.setState({ draft: removeRemark(draft, index) })}
            >
              ×
            </button>
          </li>
        ))}
      </ol>
      <form onSubmit={add}>
        <label>
          <span className="unseen">Remark on stage {stage.number}</span>
          <textarea
            rows={2}
            value={text}
            maxLength={MOST_LETTERS}
            placeholder={`Remark on stage ${stage.number}`}
            onChange={({ target }) => setText(target.value)}
          />
        </label>
        <p className="aside">
          {place === undefined
            ? 'Click the sheet to give it a place.'
            : `at ${words(movePoint(place, origin))}`}{' '}
          {place !== undefined && (
            <button type="button" onClick={() => setPlace(undefined)}>
              no place
            </button>
          )}
        </p>
        <button type="submit" disabled={!canAdd || text.trim() === ''}>
          add the remark
        </button>
      </form>
    </section>
  );
}

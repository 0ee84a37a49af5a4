/** After the gauge: the minutes that are left, back into the bath with them, or on to the next stage. */

import { useState } from 'react';
import { stateMinutes } from '#app/state/tank/run-readings.ts';
import { goToStep, putIn } from '#app/state/tank/tank-clock.ts';
import { QUESTIONED_SHARE } from '#job/questioned-share.ts';
import { SAME_MINUTE } from '#units/depth-tolerances.ts';
import { useTank } from './tank-context.ts';
import { clockText, figureOf, stampText } from './tank-words.ts';

/** Minutes that are not worth a dip: three seconds. */
const NOTHING = 0.05;

export function LeftStep() {
  const tank = useTank();
  const { stage, had, aim, record, clock, setClock, goTo } = tank;
  const own = record.result?.corrected?.stages.find(({ number }) => number === stage.number);
  // Minutes that the clock has counted and no reading gives yet count as well.
  const left = Math.max(0, aim.minutes - Math.max(had, own?.had ?? 0));
  const isDone = left < NOTHING;
  return (
    <section className="tank-left" aria-labelledby="tank-left-heading">
      <h2 id="tank-left-heading" className="unseen">
        Minutes left of stage {stage.number}
      </h2>
      <p className="left-figure">
        <span className="figure">{clockText(left)}</span>
        <span className="aside">
          {own === undefined
            ? 'as planned: nothing was read yet'
            : `${left.toFixed(1)} ± ${own.left.within.toFixed(1)} min, of ${aim.minutes.toFixed(1)} in all`}
        </span>
      </p>
      <div className="buttons">
        <button
          type="button"
          className={isDone ? '' : 'main big'}
          onClick={() => setClock(putIn(clock, stage.number, Date.now()))}
        >
          Back in now
        </button>
        <button type="button" onClick={() => goTo('gauge')}>
          Gauge again
        </button>
      </div>
      <EndOfStage key={`${stage.number} ${had > 0}`} isDone={isDone} />
    </section>
  );
}

/** What the stage had in all, which the record states, and the way on. */
function EndOfStage({ isDone }: { readonly isDone: boolean }) {
  const tank = useTank();
  const { stage, steps, index, had, aim, record, clock, setClock, hand, planText } = tank;
  const recorded = record.result?.corrected?.stages.find(({ number }) => number === stage.number)?.had ?? 0;
  const [text, setText] = useState(() => Math.max(had, recorded).toFixed(2));
  const minutes = figureOf(text);
  const isOdd = minutes !== undefined && Math.abs(minutes - aim.minutes) > QUESTIONED_SHARE * aim.minutes;
  const next = steps[index + 1]?.stage;
  const end = () => {
    if (minutes === undefined) return;
    if (minutes > recorded + SAME_MINUTE) {
      const stated = { who: hand.who, when: stampText(Date.now()), stage: stage.number, minutes };
      record.keep(stateMinutes(record.run, stated, planText));
    }
    if (next === undefined) return tank.setTab('rework');
    setClock(goToStep(clock, next.number, 'peel'));
    tank.showStage(index + 1);
  };
  return (
    <div className="end-of-stage">
      <label>
        Minutes in all
        <input inputMode="decimal" value={text} onChange={({ target }) => setText(target.value)} />
      </label>
      <button
        type="button"
        className={isDone ? 'main' : ''}
        disabled={minutes === undefined || minutes === 0}
        onClick={end}
      >
        {next === undefined ? 'The run is over' : `On to stage ${next.number}`}
      </button>
      {isOdd && (
        <p className="odd" role="status">
          {aim.minutes.toFixed(1)} minutes were to be had. The record keeps what is stated here: is it right?
        </p>
      )}
    </div>
  );
}

/** After the gauge: the minutes that are left, back into the bath with them, or on to the next stage. */

import { useState } from 'react';
import { endStage } from '#app/state/tank/run-readings.ts';
import { NO_DIP } from '#app/state/tank/stages-over.ts';
import { bathMinutes, endRun, goToStep, putIn, stateHad } from '#app/state/tank/tank-clock.ts';
import { WIDE_WORDS } from '#findings/wide-words.ts';
import { QUESTIONED_SHARE } from '#job/questioned-share.ts';
import { isWider } from '#run/correct-rates.ts';
import { useTank } from './tank-context.ts';
import { clockText, figureOf, stampText } from './tank-words.ts';

export function LeftStep() {
  const tank = useTank();
  const { stage, had, aim, record, clock, setClock, goTo, own: dips } = tank;
  const own = record.result?.corrected?.stages.find(({ number }) => number === stage.number);
  const left = Math.max(0, aim.minutes - had);
  const why = record.result?.corrected?.wide;
  const isWide = own !== undefined && isWider({ value: left, within: own.left.within });
  const wide = isWide && why !== undefined ? ` (${WIDE_WORDS[why]})` : '';
  const counted = bathMinutes({ dips: dips.dips }, Date.now());
  const isStated = dips.stated !== undefined && Math.abs(dips.stated - counted) >= NO_DIP;
  const isDone = left < NO_DIP;
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
            : `${left.toFixed(1)} ± ${own.left.within.toFixed(1)} min${wide}, of ${aim.minutes.toFixed(1)} in all`}
        </span>
      </p>
      <div className="buttons">
        <button
          type="button"
          className={isDone ? '' : 'main big'}
          onClick={() => setClock(putIn(clock, stage.number, Date.now(), had))}
        >
          Back in now
        </button>
        <button type="button" onClick={() => goTo('gauge')}>
          Gauge again
        </button>
      </div>
      {aim.isEarly && left > 0 && (
        <p>
          <strong>Gauge at {clockText(aim.outAt)}</strong> of the stage, {clockText(aim.outAt - had)} from
          now.
        </p>
      )}
      {isStated && dips.dips.length > 0 && (
        <p>
          The clock goes on from {clockText(had)}, as stated; it had counted {clockText(counted)}.
        </p>
      )}
      <EndOfStage key={stage.number} left={left} />
    </section>
  );
}

/** What the stage had in all, which the record states, and the way on. */
function EndOfStage({ left }: { readonly left: number }) {
  const tank = useTank();
  const { stage, steps, index, had, aim, record, clock, setClock, hand, planText } = tank;
  const recorded = record.result?.corrected?.stages.find(({ number }) => number === stage.number)?.had ?? 0;
  const [text, setText] = useState(() => had.toFixed(2));
  const [isAsking, setAsking] = useState(false);
  const minutes = figureOf(text);
  const isOdd = minutes !== undefined && Math.abs(minutes - aim.minutes) > QUESTIONED_SHARE * aim.minutes;
  const next = steps[index + 1]?.stage;
  // By what is stated here, not by the clock alone.
  const unused = left + had - (minutes ?? had);
  const isDone = unused < NO_DIP;
  const end = () => {
    if (minutes === undefined) return;
    const signed = { who: hand.who, when: stampText(Date.now()) };
    record.keep(
      endStage(
        record.run,
        { ...signed, stage: stage.number, minutes, next: next?.number },
        { recorded, planText },
      ),
    );
    if (next === undefined) {
      setClock(endRun(clock));
      return tank.setTab('rework');
    }
    setClock(goToStep(clock, next.number, 'peel'));
    tank.showStage(index + 1);
  };
  const change = (typed: string) => {
    setText(typed);
    // What it really had counts for the clock as well, should it go in again.
    setClock(stateHad(clock, stage.number, figureOf(typed)));
  };
  const way = next === undefined ? 'The run is over' : `On to stage ${next.number}`;
  return (
    <div className="end-of-stage">
      <label>
        Minutes in all
        <input inputMode="decimal" value={text} onChange={({ target }) => change(target.value)} />
      </label>
      <button
        type="button"
        className={isDone ? 'main' : ''}
        disabled={minutes === undefined || minutes === 0}
        onClick={isDone ? end : () => setAsking(true)}
      >
        {way}
      </button>
      {isAsking && !isDone && (
        <div className="unused" role="alert">
          <p>
            <strong>
              {clockText(unused)} of stage {stage.number} would not be used.
            </strong>{' '}
            Its floors come out thicker.
          </p>
          <div className="buttons">
            <button type="button" onClick={() => setAsking(false)}>
              Stay
            </button>
            <button type="button" onClick={end}>
              {way} all the same
            </button>
          </div>
        </div>
      )}
      {isOdd && !isAsking && (
        <p className="odd" role="status">
          The stage needs {aim.minutes.toFixed(1)} minutes. The record keeps what is stated here: is it right?
        </p>
      )}
    </div>
  );
}

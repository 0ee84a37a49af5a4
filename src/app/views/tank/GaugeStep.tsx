/** A reading at the tank: which floor, after how many minutes, who, with which gauge; the figure by keypad; a question in its place. */
import { useState } from 'react';
import { confirmNew, type ReadingPut, type Taken, tryReading } from '#app/state/tank/run-readings.ts';
import { takeBack } from '#app/state/tank/tank-clock.ts';
import type { Finding } from '#findings/finding.ts';
import type { Question } from '#run/question-readings.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { FigureField } from './FigureField.tsx';
import { Keypad } from './Keypad.tsx';
import { ReadingFields } from './ReadingFields.tsx';
import { ReadingQuestion } from './ReadingQuestion.tsx';
import { ReadingRefused } from './ReadingRefused.tsx';
import { useTank } from './tank-context.ts';
import { clockText, figureOf, stampText } from './tank-words.ts';
import { useExpected } from './use-expected.ts';
import { useUsualKind } from './use-usual-kind.ts';

type Asking = { readonly put: ReadingPut } & (
  | { readonly question: Question }
  | { readonly refused: readonly Finding[] }
);

export function GaugeStep() {
  const tank = useTank();
  const { had, gaugeAt, hand, record, planText } = tank;
  const [kind, setKind] = useState(useUsualKind());
  const [minutes, setMinutes] = useState(() => (had > 0 ? had.toFixed(2) : ''));
  const [figure, setFigure] = useState('');
  const [unit, setUnit] = useState<ShownUnit>(tank.unit);
  const [asking, setAsking] = useState<Asking>();
  const [said, setSaid] = useState('');
  const isBefore = gaugeAt.stage === 0;
  const at = {
    ...gaugeAt,
    minutes: isBefore ? undefined : figureOf(minutes),
    kind: isBefore ? ('thickness' as const) : kind,
  };
  const value = figureOf(figure);
  const isWhole = value !== undefined && (isBefore || at.minutes !== undefined);
  const putOf = (of: ShownUnit): ReadingPut => ({
    ...at,
    ...hand,
    value: value ?? 0,
    unit: of,
    when: stampText(Date.now()),
  });
  const keep = (put: ReadingPut, taken: Taken) => {
    record.keep(taken);
    setSaid(`${put.region}: ${put.value} ${put.unit} recorded.`);
    setFigure('');
    setAsking(undefined);
  };
  const take = (of: ShownUnit) => {
    if (!isWhole) return;
    const put = putOf(of);
    const tried = tryReading(record.run, put, planText);
    if ('taken' in tried) keep(put, tried.taken);
    else setAsking({ put, ...tried });
  };
  const again = () => {
    setFigure('');
    setAsking(undefined);
  };
  const change = (text: string) => {
    setAsking(undefined);
    setSaid('');
    setFigure(text);
  };
  return (
    <section className="tank-gauge" aria-label="A reading">
      <ReadingFields {...{ kind, setKind, minutes, setMinutes, onChange: () => setAsking(undefined) }} />
      <div className="reading">
        <FigureField
          {...{ figure, unit, setUnit, onFigure: change, onEnter: () => take(unit) }}
          label={`${at.kind === 'depth' ? 'Depth' : 'Thickness'} of ${gaugeAt.region}`}
          after={isBefore ? 'before the first dip' : `out at ${clockText(at.minutes ?? 0)}`}
        />
        {asking === undefined && <Expected {...at} said={said} />}
        {asking !== undefined && 'question' in asking && (
          <ReadingQuestion
            {...asking}
            typed={figure}
            onUnit={(of) => take(of)}
            onAgain={again}
            onConfirm={(reason) => keep(asking.put, confirmNew(record.run, asking.put, reason, planText))}
          />
        )}
        {asking !== undefined && 'refused' in asking && (
          <ReadingRefused findings={asking.refused} onAgain={again} />
        )}
        {asking === undefined && (
          <div className="buttons">
            <button type="button" className="main" disabled={!isWhole} onClick={() => take(unit)}>
              Record the reading
            </button>
          </div>
        )}
      </div>
      <Keypad onKey={(key) => change(pressed(figure, key))} />
      {asking === undefined && <WayOn />}
    </section>
  );
}

/** Back into the bath where the clock was stopped by mistake, or on with what was read. */
function WayOn() {
  const { own, stage, gaugeAt, clock, setClock, goTo } = useTank();
  if (gaugeAt.stage === 0)
    return (
      <div className="buttons on">
        <button type="button" onClick={() => goTo('peel')}>
          The sheet is gauged
        </button>
      </div>
    );
  return (
    <div className="buttons on">
      {own.dips.length > 0 && (
        <button type="button" onClick={() => setClock(takeBack(clock, stage.number))}>
          Still in the bath
        </button>
      )}
      <button type="button" onClick={() => goTo('left')}>
        To the minutes left
      </button>
    </div>
  );
}

type At = Pick<ReadingPut, 'stage' | 'minutes' | 'region' | 'kind'>;

function Expected({ said, ...at }: At & { readonly said: string }) {
  const expected = useExpected(at);
  return (
    <p className="expected" role="status">
      {said !== '' && <strong>{said} </strong>}
      {expected !== undefined && `Expected ${expected}.`}
    </p>
  );
}

const MOST_LETTERS = 9;

function pressed(figure: string, key: string): string {
  if (key === 'back') return figure.slice(0, -1);
  if (key === '.' && figure.includes('.')) return figure;
  return figure.length < MOST_LETTERS ? `${figure}${key}` : figure;
}

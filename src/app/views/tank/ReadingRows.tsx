/** One reading of the list; beneath it what was answered, or the form that answers it. */
import { inkOn } from '#app/views/ink-on.ts';
import { StageMark } from '#app/views/StageMark.tsx';
import type { ListedReading } from '#run/listed-readings.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { lengthFigure, type ShownUnit, showLength } from '#units/show-length.ts';
import { ReasonForm } from './ReasonForm.tsx';
import { useTank } from './tank-context.ts';

export interface Answering {
  readonly number: number;
  readonly kind: 'strike' | 'confirm';
}

interface ReadingRowsProps {
  readonly reading: ListedReading;
  readonly answering: Answering | undefined;
  readonly onAnswer: (answering: Answering | undefined) => void;
  readonly onReason: (reason: string) => void;
}

const STATES: Record<ListedReading['state'], string> = {
  counts: '',
  asked: 'in question',
  struck: 'struck out',
  'left-out': 'left out: not on a floor',
};

const REASONS = {
  strike: ['Mistyped', 'Gauge was not set to zero', 'Not on that floor', 'Wrong minutes'],
  confirm: ['Gauged again', 'Sheet is thicker here', 'Bath is faster', 'Bath is slower'],
} as const;

const COLUMNS = 8;

export function ReadingRows({ reading, answering, onAnswer, onReason }: ReadingRowsProps) {
  const { number, state, answer, region, question } = reading;
  const { unit } = useTank();
  const words = [
    STATES[state],
    state === 'asked' && question !== undefined ? `${showLength(question.expected, unit)} was expected` : '',
    answer === undefined ? '' : [answer.reason, answer.who, answer.when].filter(Boolean).join(', '),
    reading.note ?? '',
  ].filter((each) => each !== '');
  return (
    <>
      <tr className={state}>
        <ReadingCells reading={reading} />
        <td className="answer">
          {state === 'asked' && (
            <button
              type="button"
              className="link"
              aria-label={`Confirm reading ${number}, ${region}`}
              onClick={() => onAnswer({ number, kind: 'confirm' })}
            >
              Confirm
            </button>
          )}
          {state !== 'struck' && (
            <button
              type="button"
              className="link"
              aria-label={`Strike out reading ${number}, ${region}`}
              onClick={() => onAnswer({ number, kind: 'strike' })}
            >
              Strike out
            </button>
          )}
        </td>
      </tr>
      {words.length > 0 && (
        <tr className={`why ${state}`}>
          <td colSpan={COLUMNS}>{sentence(words.join(': '))}</td>
        </tr>
      )}
      {answering !== undefined && (
        <tr className="why">
          <td colSpan={COLUMNS}>
            <ReasonForm
              label={
                answering.kind === 'strike'
                  ? `Why reading ${number} is struck out`
                  : `Why reading ${number} is right`
              }
              usual={REASONS[answering.kind]}
              action={answering.kind === 'strike' ? 'Strike out' : 'Use the reading'}
              onTake={onReason}
              onClose={() => onAnswer(undefined)}
            />
          </td>
        </tr>
      )}
    </>
  );
}

function ReadingCells({ reading }: { readonly reading: ListedReading }) {
  const { unit, plan } = useTank();
  const { stage, state, region, minutes, read, kind, expected, rate, who, when, gauge } = reading;
  const color = plan.stages.find(({ number }) => number === stage)?.color;
  const isStruck = state === 'struck';
  const Cell = isStruck ? 's' : 'span';
  const time = when?.split(' ').at(-1);
  return (
    <>
      <td>
        {color === undefined ? (
          'sheet'
        ) : (
          <span className="chip" style={isStruck ? undefined : { background: color, color: inkOn(color) }}>
            {stage} <StageMark stage={stage} />
          </span>
        )}
      </td>
      <td>
        <Cell>{region}</Cell>
      </td>
      <td>
        <Cell>{minutes === undefined ? '–' : `${minutes.toFixed(1)} min`}</Cell>
      </td>
      <td>
        <Cell>
          <strong>{showLength(read, unit)}</strong>
          {kind === 'depth' && ' deep'}
          {reading.unit !== unit && (
            <small>{`${lengthFigure(read, reading.unit)}\u00a0${reading.unit}`} as read</small>
          )}
        </Cell>
      </td>
      <td>
        <Cell>{expected === undefined ? '–' : showLength(expected, unit)}</Cell>
      </td>
      <td>
        <Cell>{rate === undefined ? '–' : rateFigure(rate, unit)}</Cell>
      </td>
      <td className="by" title={when}>
        {[who, time].filter(Boolean).join(', ')}
        {gauge !== undefined && <small>{gauge}</small>}
      </td>
    </>
  );
}

function rateFigure(rate: number, unit: ShownUnit): string {
  return (rate / millimetresIn(unit)).toFixed(unit === 'mm' ? 4 : 5);
}

function sentence(words: string): string {
  const text = `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
  return text.endsWith('.') ? text : `${text}.`;
}

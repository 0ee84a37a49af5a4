/** A reading that does not fit: what it would mean, and the likely answer as the main button. It counts only once it is answered. */
import { useState } from 'react';
import type { ReadingPut } from '#app/state/tank/run-readings.ts';
import { SeverityShape } from '#app/views/SeverityShape.tsx';
import type { Question } from '#run/question-readings.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { type ShownUnit, showLength } from '#units/show-length.ts';
import { ReasonForm } from './ReasonForm.tsx';
import { useTank } from './tank-context.ts';

interface ReadingQuestionProps {
  readonly put: ReadingPut;
  /** The figure as it was typed. */
  readonly typed: string;
  readonly question: Question;
  readonly onUnit: (unit: ShownUnit) => void;
  readonly onAgain: () => void;
  readonly onConfirm: (reason: string) => void;
}

const NAMES: Record<ShownUnit, string> = { mm: 'mm', in: 'inches' };
const REASONS = ['Gauged again', 'Sheet is thicker here', 'Bath is faster', 'Bath is slower'] as const;

export function ReadingQuestion(props: ReadingQuestionProps) {
  const { put, typed, question, onUnit, onAgain, onConfirm } = props;
  const { unit } = useTank();
  const [isSure, setSure] = useState(false);
  const { inOtherUnit } = question;
  return (
    <>
      <div className="tank-question" role="alert">
        <SeverityShape severity="warn" />
        <div>
          <h2>
            {inOtherUnit === undefined ? `${typed} ${put.unit}: is this right?` : `${typed}: mm or inches?`}
          </h2>
          {meanings(put, question, unit).map((words) => (
            <p key={words}>{words}</p>
          ))}
        </div>
      </div>
      {isSure ? (
        <ReasonForm
          label={`Why ${typed} ${put.unit} is right`}
          usual={REASONS}
          action="Use the reading"
          onTake={onConfirm}
          onClose={() => setSure(false)}
        />
      ) : (
        <div className="buttons answers">
          {inOtherUnit !== undefined && (
            <button type="button" className="main" onClick={() => onUnit(inOtherUnit.unit)}>
              It is {NAMES[inOtherUnit.unit]}: {showLength(inOtherUnit.value, unit)}
            </button>
          )}
          <button type="button" className={inOtherUnit === undefined ? 'main' : ''} onClick={onAgain}>
            Type it again
          </button>
          <button type="button" onClick={() => setSure(true)}>
            {inOtherUnit === undefined ? 'It is right, say why' : `It is ${NAMES[put.unit]}, say why`}
          </button>
        </div>
      )}
    </>
  );
}

const WHY: Record<Question['why'], string> = {
  rate: '',
  repeat: 'The same floor read otherwise at the same time.',
  rose: 'Less metal is gone than the floor read before.',
  'too-deep': 'More metal is gone since the last reading than the minutes allow.',
  sheet: 'The sheet is not so thick, nor so thin, by the job and what was gauged.',
};

/** What it means as it stands, and in the other unit where it would be right in that. */
function meanings({ unit }: ReadingPut, question: Question, shown: ShownUnit): string[] {
  const { why, expected, rate, inOtherUnit, read } = question;
  const length = (mm: number) => showLength(mm, shown);
  const byRate = rate === undefined ? '' : meantBy(rate, shown);
  if (inOtherUnit !== undefined) {
    const own = rate === undefined ? `it is ${length(read)}.` : `it means ${byRate}.`;
    return [
      `In ${NAMES[unit]} ${own}`,
      `In ${NAMES[inOtherUnit.unit]} it is ${length(inOtherUnit.value)}; ${length(expected)} was expected.`,
    ];
  }
  const own = `${unit === shown ? '' : `It is ${length(read)}. `}Expected was ${length(expected)}.`;
  return [WHY[why], own, byRate === '' ? '' : `It means ${byRate}.`].filter((words) => words !== '');
}

function meantBy(rate: NonNullable<Question['rate']>, unit: ShownUnit): string {
  if (rate.read <= 0) return 'that no metal is gone';
  return `${rateText(rate.read, unit)} a minute, ${beside(rate, unit)}`;
}

function rateText(rate: number, unit: ShownUnit): string {
  return `${(rate / millimetresIn(unit)).toFixed(unit === 'mm' ? 4 : 5)} ${unit}`;
}

/** From here on a factor says more than a figure. */
const MANY_TIMES = 2;

function beside({ read, expected }: NonNullable<Question['rate']>, unit: ShownUnit): string {
  const figure = (expected / millimetresIn(unit)).toFixed(unit === 'mm' ? 4 : 5);
  const ratio = read / expected;
  return ratio >= MANY_TIMES
    ? `${ratio.toFixed(0)} times the expected ${figure}`
    : `where ${figure} is expected`;
}

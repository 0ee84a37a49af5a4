/** The readings of a run as they are shown: what was read, what was expected, whether it counts and why not. Millimetres and minutes. */
import type { Answers } from './answers.ts';
import type { ReadingRow } from './correct-readings.ts';
import type { Answered, Question } from './question-readings.ts';

export interface ListedReading {
  /** Of its row in the run, from 1: what `strike` and `confirm` name. */
  readonly number: number;
  readonly stage: number;
  /** That the stage had by then; undefined where the row leaves it open, and before the first dip. */
  readonly minutes: number | undefined;
  readonly region: string;
  /** Of a thickness over floors of both faces: the other one's region. */
  readonly behind: string | undefined;
  readonly kind: 'depth' | 'thickness';
  /** mm */
  readonly read: number;
  /** The unit that it was written in. */
  readonly unit: 'mm' | 'in';
  /** mm; undefined where nothing says it. */
  readonly expected: number | undefined;
  /** mm/min from its floor's peel on, by this reading; undefined where the floor was not bare yet, or the sheet is not known. */
  readonly rate: number | undefined;
  readonly who: string | undefined;
  readonly when: string | undefined;
  readonly gauge: string | undefined;
  readonly note: string | undefined;
  /** `asked`: it counts once it is confirmed; `left-out`: not on a floor. */
  readonly state: 'counts' | 'asked' | 'struck' | 'left-out';
  /** Also of a reading that was confirmed. */
  readonly question: Question | undefined;
  /** Who struck it out or confirmed it, when, and why. */
  readonly answer: Answer | undefined;
}

export interface Answer {
  readonly reason: string;
  readonly who: string | undefined;
  readonly when: string | undefined;
}

export interface ToList {
  readonly row: ReadingRow;
  readonly number: number;
  readonly region: string;
  readonly behind: string | undefined;
  /** mm */
  readonly read: number;
  readonly unit: 'mm' | 'in';
  /** Undefined where it is struck out or not on a floor. */
  readonly answered: Answered | undefined;
}

export function listedReading(to: ToList, { struck, confirmed }: Answers): ListedReading {
  const { row, number, region, behind, read, unit, answered } = to;
  const { stage, minutes, who, when, gauge, note } = row;
  const kind = row.depth === undefined ? 'thickness' : 'depth';
  const isStruck = struck.has(number);
  const answer = struck.get(number) ?? confirmed.get(number);
  return {
    number,
    stage,
    minutes,
    region,
    behind,
    kind,
    read,
    unit,
    expected: answered?.expected,
    rate: answered?.rate,
    who,
    when,
    gauge,
    note,
    state: isStruck ? 'struck' : stateOf(answered, confirmed.has(number)),
    question: answered?.question,
    answer: answer && { reason: answer.note ?? '', who: answer.who, when: answer.when },
  };
}

function stateOf(answered: Answered | undefined, isConfirmed: boolean): ListedReading['state'] {
  if (answered === undefined) return 'left-out';
  return answered.question === undefined || isConfirmed ? 'counts' : 'asked';
}

/** How long a stage is to be in the bath, by the plan or as corrected, and when it comes out next: first at four fifths, then at its end. */
import { GAUGED_AT } from '#job/job-defaults.ts';
import type { CorrectResult } from '#run/correct-run.ts';
import { minutesBefore, type StageClock } from './tank-clock.ts';

export interface StageAim {
  /** In all. */
  readonly minutes: number;
  /** Of the stage's minutes, at which it is taken out next. */
  readonly outAt: number;
  /** Taken out to be gauged, with minutes still to come. */
  readonly isEarly: boolean;
  readonly isCorrected: boolean;
}

export function stageAim(
  stage: { readonly number: number; readonly minutes: number },
  clock: Pick<StageClock, 'dips'>,
  corrected: CorrectResult['corrected'],
): StageAim {
  const own = corrected?.stages.find(({ number }) => number === stage.number);
  const minutes = own === undefined ? stage.minutes : own.had + own.left.value;
  const early = GAUGED_AT.value * minutes;
  // A stage that came out about then was gauged already.
  const isEarly = minutesBefore(clock) < 0.9 * early;
  return { minutes, outAt: isEarly ? early : minutes, isEarly, isCorrected: own !== undefined };
}

/**
 * How long a stage is to be in the bath, by the plan or as corrected, and when it comes out next: to be gauged at four fifths, then at
 * its end. What was read once four fifths had passed, by the plan or as corrected, is the gauging; what was read earlier is one where it
 * leaves no floor in doubt. A stage so thin that a reading would say nothing runs its minutes by the clock (method.md, M6.3).
 */
import { GAUGED_AT } from '#job/process-assumptions.ts';
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

interface AimAt {
  readonly corrected: CorrectResult['corrected'];
  /** Numbers of the stages that run by the clock. */
  readonly byClock: ReadonlySet<number>;
}

/** Of four fifths: a stage that came out about then was gauged. */
const ABOUT = 0.9;

export function stageAim(
  stage: { readonly number: number; readonly minutes: number },
  clock: Pick<StageClock, 'dips' | 'stated'>,
  { corrected, byClock }: AimAt,
): StageAim {
  const own = corrected?.stages.find(({ number }) => number === stage.number);
  const minutes = own === undefined ? stage.minutes : own.had + own.left.value;
  const early = GAUGED_AT.value * minutes;
  const before = Math.max(minutesBefore(clock), own?.had ?? 0);
  const isGauged = before >= ABOUT * GAUGED_AT.value * Math.min(stage.minutes, minutes);
  const isSettled =
    own !== undefined && own.had > 0 && corrected?.regions.every(({ verdict }) => verdict === 'met');
  const isEarly = !byClock.has(stage.number) && !isGauged && isSettled !== true && before < early;
  return { minutes, outAt: isEarly ? early : minutes, isEarly, isCorrected: own !== undefined };
}

/** How far a run has come: up to which stage nothing is to be etched any more. */
import type { CorrectResult } from '#run/correct-run.ts';
import { bathMinutes, stageInBath, type TankClock } from './tank-clock.ts';

/** Minutes that are not worth a dip: three seconds. */
export const NO_DIP = 0.05;

interface SoFar {
  readonly clock: TankClock;
  readonly corrected: CorrectResult['corrected'];
  /** The last stage that the record names; 0 before the first. */
  readonly lastRecorded: number;
}

/**
 * By number; 0 while the first is not over: a later one is recorded, peeled or was in the bath, or the readings leave it no minutes, or
 * the run was said to be over.
 */
export function stagesOver({ clock, corrected, lastRecorded }: SoFar): number {
  if (clock.isOver === true) return Number.POSITIVE_INFINITY;
  const had = (corrected?.stages ?? []).filter((stage) => stage.had > 0 && stage.left.value < NO_DIP);
  const begun = Object.entries(clock.stages)
    .filter(([, stage]) => stage.isPeeled === true || bathMinutes(stage, 0) > 0 || stage.dips.length > 0)
    .map(([number]) => Number(number));
  const over = Math.max(
    0,
    lastRecorded - 1,
    ...begun.map((each) => each - 1),
    ...had.map(({ number }) => number),
  );
  const inBath = stageInBath(clock);
  return inBath === undefined ? over : Math.min(over, inBath - 1);
}

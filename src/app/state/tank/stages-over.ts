/** How far a run has come: up to which stage nothing is to be etched any more. */
import type { CorrectResult } from '#run/correct-run.ts';
import { stageInBath, stageInHand, type TankClock } from './tank-clock.ts';

/** Minutes that are not worth a dip: three seconds. */
export const NO_DIP = 0.05;

/** By number; 0 while the first is not over: a later one is begun, or the readings leave it no minutes, or the run was said to be over. */
export function stagesOver(clock: TankClock, corrected: CorrectResult['corrected']): number {
  if (clock.isOver === true) return Number.POSITIVE_INFINITY;
  const had = (corrected?.stages ?? []).filter((stage) => stage.had > 0 && stage.left.value < NO_DIP);
  const over = Math.max(0, (stageInHand(clock) ?? 1) - 1, ...had.map(({ number }) => number));
  const inBath = stageInBath(clock);
  return inBath === undefined ? over : Math.min(over, inBath - 1);
}

/** What a minute of the clock means for a stage. */
import type { ShownStage } from '#handoff/plan-file.ts';

/** Rounding of the plan's minutes stays below this. */
const ROUNDING = 1e-6;

/** Whether its piece is off; its line is sealed over until then. */
export function isPeeled({ startMinute }: ShownStage, minute: number | undefined): boolean {
  return minute === undefined || startMinute <= minute + ROUNDING;
}

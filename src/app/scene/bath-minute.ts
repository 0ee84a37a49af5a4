/** What a minute of the clock means for a stage. */
import { ROUNDING } from '#geometry/tolerances.ts';
import type { ShownPlan, ShownStage } from '#job/formats/plan-file.ts';

/** Whether its piece is off; its line is sealed over until then. */
export function isPeeled({ startMinute }: ShownStage, minute: number | undefined): boolean {
  return minute === undefined || startMinute <= minute + ROUNDING;
}

/** Stages whose lines are in the maskant at a minute: all from the first dip, or with a new coat for each stage those of the coat that is on. */
export function cutLines(plan: ShownPlan | undefined, minute: number | undefined): readonly ShownStage[] {
  if (plan === undefined) return [];
  if (plan.masking === 'peel-next' || minute === undefined) return plan.stages;
  return plan.stages.filter((stage) => isPeeled(stage, minute)).slice(-1);
}

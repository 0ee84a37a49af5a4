/** Immersed minutes from the first stage to the end of the run: a sizing comes before them, and before the clock. */
import type { ShownPlan } from '#job/formats/plan-file.ts';

export function runEnd({ totals, sizing }: Pick<ShownPlan, 'totals' | 'sizing'>): number {
  return totals.minutes - (sizing?.minutes ?? 0);
}

/** A step so small that the tolerances of its two floors overlap: hardly worth a peel, a dip and a rinse. */
import { type Finding, finding } from '#findings/finding.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import type { PlanPlace } from './making.ts';
import { SMALLEST_STEP } from './making-limits.ts';

export function checkStep({ plan: { stages, masking }, job }: PlanPlace): Finding[] {
  return stages.flatMap((stage, i) => {
    if (stage.etch >= SMALLEST_STEP.value - ROUNDING) return [];
    const facts = {
      stage: stage.number,
      level: stage.level,
      etch: stage.etch,
      next: masking === 're-mask' ? stage.base : (stages[i + 1]?.level ?? 0),
      limit: SMALLEST_STEP.value,
      isFewest: job.levels === 'fewest',
    };
    return [finding('step-too-small', facts, { regions: stage.regions })];
  });
}

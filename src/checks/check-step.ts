/** Steps so small that the tolerances of their two floors overlap: hardly worth a peel, a dip and a rinse. */
import { type Finding, finding } from '#findings/finding.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import type { PlanPlace } from './making.ts';
import { SMALLEST_STEP } from './making-limits.ts';

/** One finding for all of them, with the figures of the smallest, the first of several. */
export function checkStep({ plan: { stages, masking }, job }: PlanPlace): Finding[] {
  const small = stages.flatMap((stage, i) => {
    const next = masking === 're-mask' ? stage.base : (stages[i + 1]?.level ?? 0);
    return stage.etch >= SMALLEST_STEP.value - ROUNDING ? [] : [{ ...stage, next }];
  });
  const [first, ...rest] = small;
  if (first === undefined) return [];
  const least = rest.reduce((a, b) => (b.etch < a.etch - ROUNDING ? b : a), first);
  const facts = {
    stage: least.number,
    level: least.level,
    etch: least.etch,
    next: least.next,
    limit: SMALLEST_STEP.value,
    isFewest: job.levels === 'fewest',
    others: rest.length,
  };
  return [finding('step-too-small', facts, { regions: small.flatMap(({ regions }) => regions) })];
}

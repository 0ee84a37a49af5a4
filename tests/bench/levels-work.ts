/** What the bench of many levels does, in one module, so that it can be bundled and run as users run it. */
import { checkMaking } from '#checks/check-making.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { measurePlan } from '#run/measure-plan.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';
import { touchingCells } from '#support/parts/touching-cells.ts';

const job = plainJob({ levels: 'as-drawn' });

function partOfCells(count: number) {
  const cells = touchingCells(count);
  const part = partOf(cells);
  return { part, asked: askedAt(part, cells.depths, { plus: 0.001, minus: 0.0012 }) };
}

/** @public */
export const levelsWork = {
  partOfCells,
  plan: (drawn: ReturnType<typeof partOfCells>) => makePlan({ ...drawn, job }),
  measure: (plan: EtchPlan) => measurePlan(plan, job),
  check: (plan: EtchPlan, measured: ReturnType<typeof measurePlan>) =>
    checkMaking({ plan, job, reached: measured.regions }, measured.groups),
} as const;

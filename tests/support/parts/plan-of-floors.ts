/** Pockets far apart in one sheet, with what is asked of each: a plan for what is judged by its levels and stages alone. */
import { expect } from 'vitest';
import type { Job, Masking } from '#job/job.ts';
import type { Asked } from '#part/part.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { partOf } from './part-of.ts';

export interface BudgetedJob {
  readonly stock?: Partial<Job['stock']>;
  readonly process?: Partial<Job['process']>;
  readonly levels?: Job['levels'];
  readonly masking?: Masking;
}

/** A sheet of 4 mm; 0.02 mm/min, ± 5 %, ± 0.5 min. */
export function planOfFloors(
  floors: readonly Asked[],
  change: BudgetedJob = {},
): { readonly plan: EtchPlan; readonly job: Job } {
  const part = partOf({ outlines: floors.map((_, i) => rectangle(i * 100, 0, i * 100 + 60, 60)) });
  const plain = plainJob(change.masking === undefined ? {} : { masking: change.masking });
  const job: Job = {
    ...plain,
    stock: { ...plain.stock, thickness: 4, minus: 0.1, plus: 0.06, ...change.stock },
    process: { ...plain.process, rate: 0.02, rateSpread: 0.05, timing: 0.5, ...change.process },
    levels: change.levels ?? 'as-drawn',
  };
  const asked = new Map(
    floors.flatMap((each, i) => {
      const region = part.regions.find(({ label }) => label.x > i * 100 && label.x < i * 100 + 60);
      return region === undefined ? [] : [[region.id, each] as const];
    }),
  );
  expect(asked.size).toBe(floors.length);
  return { plan: makePlan({ part, asked, job }), job };
}

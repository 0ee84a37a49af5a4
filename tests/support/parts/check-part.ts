/** A part drawn in a test, planned and checked: which findings about making it come out. */
import { checkMaking } from '#checks/check-making.ts';
import type { Finding } from '#findings/finding.ts';
import type { Loop } from '#geometry/span.ts';
import type { EdgeDatum, Job, Masking } from '#job/job.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { measurePlan } from '#run/measure-plan.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from './part-of.ts';

export interface CheckedPart {
  readonly sheet: Loop;
  readonly outlines: readonly Loop[];
  readonly depths: readonly (readonly [x: number, y: number, depth: number])[];
  readonly tolerance?: number;
  /** Everything etched is cut out: the depth at which its drawn lines stand on the wall, mm. */
  readonly wall?: number;
  readonly factor?: number;
  readonly edgeDatum?: EdgeDatum;
  readonly masking?: Masking;
  readonly levels?: Job['levels'];
  readonly stock?: Partial<Job['stock']>;
  readonly rateSpread?: number;
  readonly rules?: Partial<Job['rules']>;
}

export function checkPart(
  drawn: CheckedPart,
  spoil: (plan: EtchPlan) => EtchPlan = (plan) => plan,
): Finding[] {
  const part = partOf(drawn);
  const job = jobOf(drawn);
  const { tolerance, wall } = drawn;
  const asked = askedAt(
    part,
    drawn.depths,
    tolerance === undefined ? undefined : { plus: tolerance, minus: tolerance },
  );
  // Land keeps its surface: nothing is asked of it.
  const land = [...asked].filter(([, { depth }]) => depth === 0).map(([id]) => id);
  const etched = [...asked].filter(([id]) => !land.includes(id));
  const walled = etched.map(([id, each]) => [id, { ...each, ...(wall !== undefined && { wall }) }] as const);
  const plan = spoil(makePlan({ part, asked: new Map(walled), job }));
  const measures = measurePlan(plan, job);
  return [...plan.findings, ...checkMaking({ plan, job, reached: measures.regions }, measures.groups)];
}

function jobOf({
  factor = 1,
  edgeDatum = 'shallow-edge',
  masking,
  levels,
  stock,
  rateSpread,
  rules,
}: CheckedPart): Job {
  const job = plainJob({
    etchFactor: [[0, factor]],
    edgeDatum,
    ...(masking && { masking }),
    ...(levels && { levels }),
  });
  return {
    ...job,
    stock: { ...job.stock, ...stock },
    // The factor is sure, so that each rule is seen alone.
    process: { ...job.process, factorSpread: 0, rateSpread: rateSpread ?? job.process.rateSpread },
    rules: { ...job.rules, ...rules },
  };
}

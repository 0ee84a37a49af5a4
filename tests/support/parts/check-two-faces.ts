/** A sheet with pockets on either face, drawn in a test, planned and checked: what its faces mean for each other. Undercut 1. */
import { checkFaces } from '#checks/check-faces.ts';
import type { Finding } from '#findings/finding.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Loop } from '#geometry/span.ts';
import type { Job, Masking } from '#job/job.ts';
import type { Asked, Part } from '#part/part.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan, type PlanFace } from '#plan/make-plan.ts';
import { measurePlan } from '#run/measure-plan.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { partOf } from './part-of.ts';

/** An outline, a point in it, and what is asked there. */
export type Pocket = readonly [
  outline: Loop,
  x: number,
  y: number,
  asked: Partial<Asked> & { depth: number },
];

export interface TwoFaces {
  readonly near: readonly Pocket[];
  readonly far?: readonly Pocket[];
  /** Land without end where false. */
  readonly sheet?: false;
  readonly stock?: Partial<Job['stock']>;
  readonly masking?: Masking;
  readonly rateSpread?: number;
  readonly minWeb?: number;
  readonly registration?: number;
  readonly change?: (plan: EtchPlan) => EtchPlan;
}

const SHEET = rectangle(-40, -40, 130, 90);

export function checkTwoFaces(drawn: TwoFaces): Finding[] {
  const { stock, masking, rateSpread = 0.05, minWeb = 0, registration = 0 } = drawn;
  const plain = plainJob({ etchFactor: [[0, 1]], levels: 'as-drawn', ...(masking && { masking }) });
  const job: Job = {
    ...plain,
    stock: { ...plain.stock, thickness: 6, minus: 0.23, plus: 0.04, ...stock },
    process: { ...plain.process, factorSpread: 0, rateSpread },
    rules: { ...plain.rules, minWeb },
    far: { ...plain.far, registration },
  };
  const sheet = drawn.sheet === false ? undefined : SHEET;
  const far = drawn.far && faceOf('F', drawn.far, sheet);
  const made = makePlan({ ...faceOf('R', drawn.near, sheet), far, job });
  const plan = drawn.change?.(made) ?? made;
  return checkFaces(plan, measurePlan(plan, job), job);
}

/** Regions are R1 or F1 and on; the sheet is land. */
function faceOf(letter: string, pockets: readonly Pocket[], sheet: Loop | undefined): PlanFace {
  const drawn = partOf({ ...(sheet && { sheet }), outlines: pockets.map(([outline]) => outline) });
  const regions = drawn.regions.map((region) => ({ ...region, id: region.id.replace('R', letter) }));
  const part: Part = { ...drawn, regions };
  const asked = regions.map(({ id, loops }): [string, Asked] => {
    const hit = pockets.find(([, x, y]) => isInsideLoops(loops, { x, y }));
    return [id, { plus: 0.04, minus: 0.06, depth: 0, ...hit?.[3] }];
  });
  return { part, asked: new Map(asked) };
}

/** Code and facts of the findings of the codes wanted. */
export const reported = (findings: readonly Finding[], ...wanted: readonly string[]) =>
  findings.filter(({ code }) => wanted.includes(code)).map(({ code, facts }) => [code, facts]);

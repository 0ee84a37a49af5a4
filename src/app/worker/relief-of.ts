/** The surface that a plan leaves in its sheet, as arrays. */
import { makeContourKit } from '#front/contour-kit.ts';
import { frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { reliefMesh } from '#front/relief-mesh.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import type { ReliefArrays } from './planned-page.ts';

interface ReliefInput {
  readonly plan: EtchPlan;
  /** mm */
  readonly thickness: number;
  readonly tolerance: number;
}

export function reliefOf({ plan, thickness, tolerance }: ReliefInput): ReliefArrays {
  return reliefMesh(makeContourKit(indexFront(frontOfPlan(plan, thickness))), { tolerance });
}

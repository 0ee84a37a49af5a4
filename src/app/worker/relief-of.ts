/** The surface that a plan leaves, as arrays. */
import type { PlanFile } from '#handoff/plan-file.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import type { ReliefArrays } from './planned-page.ts';

interface ReliefInput {
  readonly plan: EtchPlan;
  readonly planFile: PlanFile | undefined;
  readonly tolerance: number;
}

export function reliefOf(_input: ReliefInput): ReliefArrays {
  return { positions: new Float32Array(), indices: new Uint32Array(), stageOfTriangle: new Uint8Array() };
}

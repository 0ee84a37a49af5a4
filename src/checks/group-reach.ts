/** How far regions of a plan have to do with each other: the widest of what any rule about places looks across. */

import type { Job } from '#job/job.ts';
import { undercutOf, wholeUndercut } from '#plan/allowance.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import type { GroupReach } from '#plan/plan-groups.ts';
import { LAND_TO_DEPTH } from './making-limits.ts';

/** mm that is added, far more than any rule looks beside a place. */
const SPARE = 0.1;

export function groupReach(plan: EtchPlan, { process, rules }: Pick<Job, 'process' | 'rules'>): GroupReach {
  const levels = plan.stages.map(({ level }) => level);
  const undercut = undercutOf(process, levels);
  // Else walls may come past their drawn lines.
  const staysInside =
    process.masking === 'peel-next' &&
    process.edgeDatum === 'shallow-edge' &&
    plan.regions.every(({ asked }) => asked.wall === undefined);
  const { minLandWidth, minLineSpacing, minPieceWidth } = rules;
  return {
    past: (deepest) => (staysInside ? 0 : wholeUndercut(undercut, deepest)) + process.factorSpread * deepest,
    feels: (deepest) =>
      SPARE +
      Math.max(
        minLandWidth,
        minLineSpacing,
        minPieceWidth,
        LAND_TO_DEPTH.value * deepest,
        2 * wholeUndercut(undercut, deepest),
      ),
  };
}

/** Cuts deeper than practice knows. */
import { type Finding, finding } from '#findings/finding.ts';
import type { PlanPlace } from './making.ts';
import { DEEPEST_CUT } from './making-limits.ts';

export function checkCutDepth({ plan }: PlanPlace): Finding[] {
  const deep = plan.regions.filter(({ level }) => level > DEEPEST_CUT.value);
  const deepest = [...deep].sort((a, b) => b.level - a.level)[0];
  if (deepest === undefined) return [];
  const facts = { depth: deepest.level, limit: DEEPEST_CUT.value };
  return [
    finding('cut-deeper-than-practice', facts, { at: deepest.label, regions: deep.map(({ id }) => id) }),
  ];
}

/** Maskant that stands out far over undercut metal: it flaps, traps gas and breaks off. */
import { etchFactorAt } from '#bath/etch-factor.ts';
import { type Finding, finding } from '#findings/finding.ts';
import type { EtchPlan, PlannedRegion, Stage } from '#plan/etch-plan.ts';
import type { PlanPlace } from './making.ts';
import { LONGEST_OVERHANG } from './making-limits.ts';

export function checkOverhang(making: PlanPlace): Finding[] {
  const { plan, unopened } = making;
  if (plan.masking === 're-mask') return plan.stages.flatMap((stage) => overCoat(plan, stage));
  return plan.stages.flatMap(({ level, number }) => {
    const long = plan.regions
      .filter((region) => region.level === level && !unopened.has(region.id))
      .map((region) => ({ region, overhang: overhangOf(making, region) }))
      .filter(({ overhang }) => overhang > LONGEST_OVERHANG.value)
      .sort((a, b) => b.overhang - a.overhang);
    const [longest] = long;
    if (longest === undefined) return [];
    const facts = { overhang: longest.overhang, limit: LONGEST_OVERHANG.value, stage: number, level };
    return [
      finding('maskant-overhang-long', facts, {
        at: longest.region.label,
        regions: long.map(({ region }) => region.id).sort(),
      }),
    ];
  });
}

/** A coat of the stage's own is cut under by that stage alone, all round its windows. */
function overCoat({ etchFactor }: EtchPlan, { level, etch, number, regions }: Stage): Finding[] {
  const overhang = etchFactorAt(etchFactor, etch) * etch;
  if (overhang <= LONGEST_OVERHANG.value) return [];
  const facts = { overhang, limit: LONGEST_OVERHANG.value, stage: number, level };
  return [finding('maskant-overhang-long', facts, { regions })];
}

/** Longest overhang beside a region: maskant of a shallower neighbour is cut under only until it is peeled itself. */
function overhangOf({ plan: { etchFactor }, around }: PlanPlace, { loops, level }: PlannedRegion): number {
  let longest = 0;
  for (const span of loops.flat()) {
    const across = around.levelAcross(span);
    if (across === undefined || across >= level) continue;
    const cut = level - across;
    longest = Math.max(longest, etchFactorAt(etchFactor, cut) * cut);
  }
  return longest;
}

/** Maskant that stands out far over undercut metal: it flaps, traps gas and breaks off. */
import { etchFactorAt } from '#bath/etch-factor.ts';
import { type Finding, finding } from '#findings/finding.ts';
import type { RegionId } from '#part/part.ts';
import type { EtchPlan, PlannedRegion, Stage } from '#plan/etch-plan.ts';
import type { MakingPlace, PlaceRule, WholePlan } from './making.ts';
import { LONGEST_OVERHANG } from './making-limits.ts';

interface LongOverhang {
  readonly region: RegionId;
  readonly overhang: number;
}

export const overhangs: PlaceRule<LongOverhang> = { find, report };

function find(making: MakingPlace): LongOverhang[] {
  const { plan, unopened } = making;
  if (plan.masking === 're-mask') return [];
  return plan.regions
    .filter(({ id, level }) => level > 0 && !unopened.has(id))
    .map((region) => ({ region: region.id, overhang: overhangOf(making, region) }))
    .filter(({ overhang }) => overhang > LONGEST_OVERHANG.value);
}

function report(found: readonly LongOverhang[], { plan }: WholePlan): Finding[] {
  if (plan.masking === 're-mask') return plan.stages.flatMap((stage) => overCoat(plan, stage));
  if (found.length === 0) return [];
  const byRegion = new Map(found.map(({ region, overhang }) => [region, overhang]));
  return plan.stages.flatMap(({ level, number }) => {
    const long = plan.regions
      .filter((region) => region.level === level)
      .flatMap((region) => {
        const overhang = byRegion.get(region.id);
        return overhang === undefined ? [] : [{ region, overhang }];
      })
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
function overhangOf(
  { plan: { etchFactor }, levelAcross }: MakingPlace,
  { loops, level }: PlannedRegion,
): number {
  let longest = 0;
  for (const span of loops.flat()) {
    const across = levelAcross(span);
    if (across === undefined || across >= level) continue;
    const cut = level - across;
    longest = Math.max(longest, etchFactorAt(etchFactor, cut) * cut);
  }
  return longest;
}

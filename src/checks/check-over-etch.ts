/**
 * No point of a region may end deeper than its level: scribe lines are placed so that it cannot (M3.1). This check holds the
 * front against that, so that a fault of the plan can never pass as a plan.
 *
 * Beside a wall depth grows like a square root, so a line that is off by a micrometre shows as tens of micrometres of depth
 * right on the drawn line. What is held against a limit is therefore how far a stage's opening is nearer than it may be.
 */
import { etchFactorAt } from '#bath/etch-factor.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { makeProbe, type Probe } from '#front/depth-at.ts';
import { momentAt } from '#front/front.ts';
import { valueAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, pointAlong } from '#geometry/span.ts';
import { ROUNDING, SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import type { RegionId } from '#part/part.ts';
import { allowance, throughAllowance, type Undercut, wholeUndercut } from '#plan/allowance.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';
import type { MakingPlace, PlaceRule, WholePlan } from './making.ts';

/** Places looked at along each span. */
const TRIED = [0.1, 0.5, 0.9];

interface OverEtched {
  readonly region: RegionId;
  readonly at: Point;
  readonly depth: number;
  /** How much nearer an opening comes than its allowance lets it, mm. */
  readonly near: number;
}

export const overEtch: PlaceRule<OverEtched> = { find, report };

function find(making: MakingPlace): OverEtched[] {
  const { plan, kit, reached } = making;
  const probe = makeProbe(kit.index, momentAt(kit.index.front));
  return plan.regions.flatMap((region) => {
    const { deepest } = valueAt(reached, region.id);
    if (deepest <= allowedIn(region) + ROUNDING) return [];
    const [worst] = placesIn(region)
      .map((at) => ({ at, ...tooNear(making, region, probe, at) }))
      .filter(({ near }) => near > SCRIBE_ACCURACY)
      .sort((a, b) => b.near - a.near);
    return worst === undefined ? [] : [{ region: region.id, ...worst }];
  });
}

/** In the order of the part's regions; of land between several groups its worst place. */
function report(found: readonly OverEtched[], { plan }: WholePlan): Finding[] {
  if (found.length === 0) return [];
  return plan.regions.flatMap((region) => {
    const [worst] = found.filter((each) => each.region === region.id).sort((a, b) => b.near - a.near);
    if (worst === undefined) return [];
    const { at, depth, near } = worst;
    const facts = { depth, limit: allowedIn(region), near };
    return [finding('region-over-etched', facts, { at, regions: [region.id] })];
  });
}

/** A listed level may lie above the depth asked by the region's plus; land keeps its surface. */
function allowedIn({ level, asked }: PlannedRegion): number {
  return level > 0 ? Math.max(level, asked.depth + asked.plus) : 0;
}

function placesIn({ loops, label }: PlannedRegion): Point[] {
  return [label, ...loops.flat().flatMap((span) => TRIED.map((share) => pointAlong(span, share)))];
}

/** How much nearer to a place the opening comes that etched it deepest than its allowance lets it, mm; and the depth there. */
function tooNear(
  { plan, undercut }: MakingPlace,
  region: PlannedRegion,
  probe: Probe,
  { x, y }: Point,
): { depth: number; near: number } {
  const depth = probe.measure(x, y);
  const { level, base } = plan.stages[probe.stage() - 1] ?? { level: 0, base: 0 };
  if (depth <= allowedIn(region)) return { depth, near: 0 };
  const allowed = allowedIn(region);
  const kept = Math.min(
    ...ownersOf(plan, level).map((owner) => keptBy(undercut, { owner, level, allowed })),
    ...keptByThrough(undercut, plan.regions, { level, at: { x, y } }),
  );
  const [cut, below] = [level - base, depth - base];
  const gap = etchFactorAt(undercut.etchFactor, cut) * Math.sqrt(cut * cut - below * below);
  return { depth, near: kept - gap };
}

/**
 * Beside what is cut out the wall stands on the drawn line at its narrowest place, and outside it above and below (M9.4): with one coat all
 * openings keep as far from it, with a new coat for each stage one that is less deep keeps less, as far as the deeper stages reach.
 */
function keptByThrough(
  undercut: Undercut,
  regions: readonly PlannedRegion[],
  { level: stage, at }: { readonly level: number; readonly at: Point },
): number[] {
  return regions.flatMap(({ level, asked: { wall }, loops }) => {
    if (wall === undefined || level === 0) return [];
    const reach = wholeUndercut(undercut, level);
    const isBeside = loops.some((loop) => loop.some((span) => distanceToSpan(span, at) <= reach));
    if (!isBeside) return [];
    const kept = throughAllowance(undercut, { level, wall });
    if (undercut.coatLevels === undefined || stage >= level) return [kept];
    return [kept - reach + wholeUndercut(undercut, stage)];
  });
}

/** Levels whose walls a stage may have cut: its own, or with a new coat for each stage any as deep. */
function ownersOf({ stages, masking }: EtchPlan, level: number): number[] {
  if (masking === 'peel-next') return [level];
  return stages.map((stage) => stage.level).filter((each) => each >= level);
}

/** What a stage's window keeps of a region where its wall is part of the owner's: less as far as the deeper stages reach. */
function keptBy(
  undercut: Undercut,
  { owner, level, allowed }: { readonly owner: number; readonly level: number; readonly allowed: number },
): number {
  const whole = allowance(undercut, { level: owner, depth: allowed });
  return owner === level ? whole : whole - wholeUndercut(undercut, owner) + wholeUndercut(undercut, level);
}

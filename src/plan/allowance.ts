/** The allowance u(ℓ, d): how far an opening of level ℓ must stay from a region that may be etched to d only (M3.1, M3.3, M3.5). */
import { type EtchFactor, etchFactorAt } from '#bath/etch-factor.ts';
import type { EdgeDatum, Job } from '#job/job.ts';

/** Share of the step, from the shallower floor down, at which the drawn line stands on the finished wall. */
const DATUM_SHARE: Record<EdgeDatum, number> = { 'shallow-edge': 0, 'mid-wall': 0.5, 'deep-foot': 1 };

export interface Undercut {
  readonly etchFactor: EtchFactor;
  readonly edgeDatum: EdgeDatum;
  /** Levels, rising, where each is etched through a coat of its own; undefined where one coat serves the run. */
  readonly coatLevels?: readonly number[];
}

/** Share of a step at which the drawn line stands (M3.3). */
export function datumShare({ edgeDatum }: Pick<Undercut, 'edgeDatum'>): number {
  return DATUM_SHARE[edgeDatum];
}

interface Step {
  readonly level: number;
  readonly depth: number;
}

export function undercutOf(
  { etchFactor, edgeDatum, masking }: Pick<Job['process'], 'etchFactor' | 'edgeDatum' | 'masking'>,
  levels: readonly number[],
): Undercut {
  if (masking === 'peel-next') return { etchFactor, edgeDatum };
  return { etchFactor, edgeDatum, coatLevels: [...levels].sort((a, b) => a - b) };
}

/**
 * u(ℓ, d) = φ(ℓ) √(ℓ² − z²) with z = d + f (ℓ − d), f the edge datum's share; mm.
 * From the front's depth √(ℓ² − (x / φ)²) at distance x from an opening: the wall stands at depth z where x = u.
 * With a new coat for each stage the walls of the stages stand on each other, and each adds its own.
 */
export function allowance(undercut: Undercut, { level, depth }: Step): number {
  const { etchFactor, coatLevels } = undercut;
  const atLine = depth + datumShare(undercut) * (level - depth);
  const bands = coatLevels === undefined ? [{ from: 0, to: level }] : bandsUpTo(level, coatLevels);
  return bands.reduce((sum, { from, to }) => {
    const cut = to - from;
    const below = Math.max(0, atLine - from);
    return sum + etchFactorAt(etchFactor, cut) * Math.sqrt(Math.max(0, cut * cut - below * below));
  }, 0);
}

/**
 * How far an opening keeps back from the drawn line of a contour that is cut out, mm: the wall stands on that line at the depth
 * `wall`, its narrowest place, whatever a drawn line means elsewhere (M9.4). 0 where the level does not come so deep.
 */
export function throughAllowance(
  undercut: Undercut,
  { level, wall }: { level: number; wall: number },
): number {
  return level <= wall ? 0 : allowance({ ...undercut, edgeDatum: 'shallow-edge' }, { level, depth: wall });
}

/** How far the wall of a level reaches from its opening at the surface, mm. */
export function wholeUndercut(undercut: Undercut, level: number): number {
  return allowance({ ...undercut, edgeDatum: 'shallow-edge' }, { level, depth: 0 });
}

/** Depths that each stage etches on the way to a level, from the surface down. */
function bandsUpTo(
  level: number,
  levels: readonly number[],
): { readonly from: number; readonly to: number }[] {
  const floors = [0, ...levels.filter((each) => each < level), level];
  return floors.slice(1).map((to, index) => ({ from: floors[index] ?? 0, to }));
}

/**
 * Radius in plan of the wall's edge round a plain corner of the opening: as far as the etch came from the opening that made the edge.
 * Corners drawn rounder come out as drawn.
 */
export function cornerRadius(undercut: Undercut, { level, depth }: Step): number {
  const { coatLevels, edgeDatum } = undercut;
  // Windows that hold a deeper one grown (M3.5) are as round as it was grown.
  const isWhole = coatLevels === undefined || edgeDatum !== 'shallow-edge';
  if (isWhole) return allowance(undercut, { level, depth });
  return allowance(undercut, { level: coatLevels.find((each) => each > depth) ?? level, depth });
}

/** The allowance u(ℓ, d): how far an opening of level ℓ must stay from a region that may be etched to d only (M3.1, M3.3). */
import { type EtchFactor, etchFactorAt } from '#bath/etch-factor.ts';
import type { EdgeDatum } from '#part/job.ts';

/** Share of the step, from the shallower floor down, at which the drawn line stands on the finished wall. */
const DATUM_SHARE: Record<EdgeDatum, number> = { 'shallow-edge': 0, 'mid-wall': 0.5, 'deep-foot': 1 };

export interface Undercut {
  readonly etchFactor: EtchFactor;
  readonly edgeDatum: EdgeDatum;
}

/**
 * u(ℓ, d) = φ(ℓ) √(ℓ² − z²) with z = d + f (ℓ − d), f the edge datum's share; mm.
 * From the front's depth √(ℓ² − (x / φ)²) at distance x from an opening: the wall stands at depth z where x = u.
 */
export function allowance(undercut: Undercut, { level, depth }: { level: number; depth: number }): number {
  const atLine = depth + DATUM_SHARE[undercut.edgeDatum] * (level - depth);
  return etchFactorAt(undercut.etchFactor, level) * Math.sqrt(Math.max(0, level * level - atLine * atLine));
}

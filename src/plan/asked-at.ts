/** What the drawing asks at a place of a region: of a strip the taper's depth there, not the strip's own. */
import type { Point } from '#geometry/point.ts';
import { taperedAt } from '#job/tapered-at.ts';
import type { Asked } from '#part/part.ts';
import type { PlannedRegion } from './etch-plan.ts';

export function askedAt({ asked, taper }: Pick<PlannedRegion, 'asked' | 'taper'>, at: Point): Asked {
  if (taper === undefined) return asked;
  const { tapers, plus, minus } = taper;
  // A sheet that is thinner than the thickness asked, within its tolerance, is land.
  return { depth: Math.max(0, taperedAt(tapers, at)), plus, minus };
}

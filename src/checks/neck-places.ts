/** Where two walls of a region come so near to each other that there may be no room for an opening between them. */

import { itemAt } from '#geometry/assert.ts';
import type { Span } from '#geometry/span.ts';
import { LEAST_OPENING } from '#geometry/tolerances.ts';
import { allowance, throughAllowance } from '#plan/allowance.ts';
import type { PlannedRegion } from '#plan/etch-plan.ts';
import type { MakingPlace, NeckPlace } from './making.ts';
import { narrowPlaces } from './narrow-places.ts';
import { type Side, sidesOf } from './sides.ts';

interface Wall extends Side {
  readonly region: PlannedRegion;
  readonly width: number;
  /** Greatest sum with another wall of the region. */
  readonly widest: number;
}

type NeckAsk = Pick<MakingPlace, 'plan' | 'unopened' | 'undercut' | 'levelAcross'>;

/** They follow from the plan, whatever its front. */
export function neckPlaces(place: NeckAsk): NeckPlace[] {
  const { plan, unopened } = place;
  const walls = plan.regions
    .filter(({ id, level }) => level > 0 && !unopened.has(id))
    .flatMap((region) => wallsOf(place, region));
  return narrowPlaces(walls, {
    widestOf: (side) => itemAt(walls, side).widest,
    limitOf: (a, b) => neckLimit(itemAt(walls, a), itemAt(walls, b)),
  }).map((place) => {
    const [a, b] = place.sides;
    const { region, width } = itemAt(walls, a);
    return { ...place, region, limit: width + itemAt(walls, b).width };
  });
}

/** Two walls of one region need both allowances between them, and as much for the opening as distinguishes it from none. */
function neckLimit(a: Wall, b: Wall): number {
  return a.region === b.region ? a.width + b.width + LEAST_OPENING : 0;
}

/** Sides of a region that its opening has to keep back from. */
function wallsOf({ undercut, levelAcross }: NeckAsk, region: PlannedRegion): Wall[] {
  const {
    level,
    asked: { wall },
  } = region;
  const widthAt = (span: Span): number => {
    const depth = levelAcross(span);
    if (depth === undefined || depth >= level) return 0;
    return wall === undefined
      ? allowance(undercut, { level, depth })
      : throughAllowance(undercut, { level, wall });
  };
  const widths = new Map(region.loops.flat().map((span) => [span, widthAt(span)]));
  const sides = sidesOf(region.loops, (a, b) => widths.get(a) === widths.get(b))
    .map((side) => ({ ...side, region, width: widths.get(itemAt(side.parts, 0)) ?? 0 }))
    .filter(({ width }) => width > 0);
  const widest = sides.reduce((most, { width }) => Math.max(most, width), 0);
  return sides.map((side) => ({ ...side, widest: side.width + widest + LEAST_OPENING }));
}

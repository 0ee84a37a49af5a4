/**
 * Land too narrow at the surface: untouched metal between two etched areas, or between one and the sheet's edge, narrower
 * than the job's least land or than twice the depth beside it. Where the maskant on it is too narrow already, or it is an
 * island too small, those findings say so.
 */

import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { loopArea, nearestShare, pointAlong, tangentAlong } from '#geometry/span.ts';
import { BESIDE_LINE, OFF_END, SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import { allowance, wholeUndercut } from '#plan/allowance.ts';
import { gatherNarrow, type NarrowFound } from './gather-narrow.ts';
import type { MakingPlace, PlaceRule, WholePlan } from './making.ts';
import { LAND_TO_DEPTH } from './making-limits.ts';
import { isUnder, middleOf, narrowPlaces } from './narrow-places.ts';
import { type Side, sidesOf } from './sides.ts';
import { areaOfDisc, deepestUndercutter, gaugeOf, isOnSheet, undercutterAt } from './standing-maskant.ts';
import { isAllIn, regionsBeside, wayPath } from './way-across.ts';

interface NarrowLand extends NarrowFound {
  /** Width of the maskant on it, mm. */
  readonly figures: readonly [maskant: number];
  readonly depth: number;
}

export const landWidth: PlaceRule<NarrowLand> = { find, report };

function find(making: MakingPlace): NarrowLand[] {
  const { plan, land, kit, job } = making;
  const least = job.rules.minLandWidth;
  const etched = sidesOf(land.filter((loop) => loopArea(loop) < 0 || loopArea(loop) >= areaOfDisc(least)));
  const sides = [...etched, ...sidesOf(plan.sheet)];
  const besideAt = (side: number, at: Point) => {
    if (side >= etched.length) return { reach: 0, level: 0 };
    const cutter = undercutterAt(making, at, 'surface');
    // Walls that stand on each other come to the surface as the first stage's: the floor beside the land says how deep it goes.
    return plan.masking === 're-mask'
      ? { ...cutter, level: levelBeside(making, itemAt(etched, side), at) }
      : cutter;
  };
  const measure = gaugeOf(making);
  const isUntouched = (point: Point): boolean =>
    isOnSheet(kit.index, point.x, point.y) && measure(point) <= SCRIBE_ACCURACY;
  const widest = Math.max(least, LAND_TO_DEPTH.value * Math.max(...plan.stages.map(({ level }) => level)));
  const widestOn = (side: number): number => {
    if (side >= etched.length) return least;
    // By the first stage's wall it does not show how deep the floors beside it are.
    const level =
      plan.masking === 're-mask' ? 0 : deepestUndercutter(making, itemAt(etched, side), 'surface').level;
    return level === 0 ? widest : Math.max(least, LAND_TO_DEPTH.value * level);
  };
  const limits = sides.map((_, side) => widestOn(side));
  return narrowPlaces(sides, {
    widestOf: () => widest,
    limitOf: (a, b) => (a >= etched.length ? 0 : Math.max(itemAt(limits, a), itemAt(limits, b))),
  })
    .filter((place) => isAllIn(place, isUntouched))
    .flatMap((place) => {
      const [one, other] = [besideAt(place.sides[0], place.from), besideAt(place.sides[1], place.to)];
      const depth = Math.max(one.level, other.level);
      const limit = Math.max(least, LAND_TO_DEPTH.value * depth);
      if (!isUnder(place.width, limit)) return [];
      return [
        {
          width: place.width,
          limit,
          figures: [place.width + one.reach + other.reach] as const,
          depth,
          at: middleOf(place),
          regions: regionsBeside(making, place),
          outline: [wayPath(place)],
        },
      ];
    });
}

function report(found: readonly NarrowLand[], { job }: WholePlan): Finding[] {
  const least = job.rules.minLandWidth;
  const narrowMaskant = new Set(
    found.filter(({ figures: [maskant] }) => isUnder(maskant, least)).map(({ regions }) => regions.join(' ')),
  );
  const reported = found.filter(({ regions }) => !narrowMaskant.has(regions.join(' ')));
  return gatherNarrow(reported).map(({ first, places, regions, outline }) =>
    finding(
      'land-too-narrow',
      { width: first.width, limit: first.limit, depth: first.depth, maskant: first.figures[0], places },
      { at: first.at, regions, outline },
    ),
  );
}

/** The deepest level whose wall comes up at a side: as far behind it as its drawn line then stands lies a region of that level. */
function levelBeside({ around, undercut, plan }: MakingPlace, { span }: Side, near: Point): number {
  // At its very end another side begins, of another floor perhaps.
  const share = Math.min(1 - OFF_END, Math.max(OFF_END, nearestShare(span, near)));
  const at = pointAlong(span, share);
  const along = tangentAlong(span, share);
  const behind = ({ level }: { readonly level: number }): number => {
    const away = BESIDE_LINE + wholeUndercut(undercut, level) - allowance(undercut, { level, depth: 0 });
    return around.regionAt({ x: at.x + along.y * away, y: at.y - along.x * away })?.level === level
      ? level
      : 0;
  };
  return Math.max(0, ...plan.stages.map(behind));
}

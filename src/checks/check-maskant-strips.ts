/**
 * Strips of maskant that stand to the end of their coat between two openings, or between one and the sheet's edge: too narrow to hold, or
 * undercut from both sides until the fronts meet and nothing holds them.
 */
import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import { gatherNarrow, type NarrowFound } from './gather-narrow.ts';
import type { MakingPlace, PlaceRule, WholePlan } from './making.ts';
import { isUnder, middleOf, type NarrowPlace, narrowPlaces } from './narrow-places.ts';
import {
  deepestUndercutter,
  gaugeOf,
  type StandingMaskant,
  standingMaskant,
  undercutterAt,
} from './standing-maskant.ts';
import { isAllIn, pointOn, regionsBeside, wayPath } from './way-across.ts';

interface Strip extends NarrowFound {
  /** Undercut from both sides, mm. */
  readonly undercut: number;
  /** Depth of the highest metal left under the strip, mm. */
  readonly ridge: number;
  /** Depth of the floor that the coat's openings are cut over, mm. */
  readonly base: number;
  /** Depth that the metal under it may have, mm: its region's, and what was gone before the coat. */
  readonly wanted: number;
}

export const maskantStrips: PlaceRule<Strip> = { find, report };

function find(making: MakingPlace): Strip[] {
  return standingMaskant(making).flatMap((coat) => findStrips(making, coat, making.job.rules.minLandWidth));
}

function report(strips: readonly Strip[], { job }: WholePlan): Finding[] {
  const least = job.rules.minLandWidth;
  // Over a region that wants the metal gone that deep, losing the maskant does no harm.
  const lost = strips.filter(({ ridge, wanted }) => ridge > wanted + SCRIBE_ACCURACY);
  const narrow = strips.filter(
    ({ ridge, base, width }) => ridge <= base + SCRIBE_ACCURACY && isUnder(width, least),
  );
  return [
    ...gatherNarrow(lost).map(({ first, places, regions, outline }) => {
      const { width, undercut, ridge } = first;
      return finding(
        'maskant-comes-off',
        { width, undercut, ridge, least, places },
        { at: first.at, regions, outline },
      );
    }),
    ...gatherNarrow(narrow).map(({ first, places, regions, outline }) => {
      const footing = Math.max(0, first.width - first.undercut);
      return finding(
        'maskant-too-narrow',
        { width: first.width, footing, limit: least, places },
        { at: first.at, regions, outline },
      );
    }),
  ];
}

function findStrips(making: MakingPlace, coat: StandingMaskant, least: number): Strip[] {
  const { sides, cutSides, isStanding, base } = coat;
  const reachOf = (side: number, at: Point): number =>
    side < cutSides ? undercutterAt(making, at, 'line').reach : 0;
  const measure = gaugeOf(making);
  const widest = Math.max(least, 2 * Math.max(...making.kit.index.reaches));
  const mosts = sides.map((side, number) =>
    number < cutSides ? deepestUndercutter(making, side, 'line').reach : 0,
  );
  return narrowPlaces(sides, {
    widestOf: () => widest,
    // The sheet's own width is nobody's fault here.
    limitOf: (a, b) => (a >= cutSides ? 0 : Math.max(least, itemAt(mosts, a) + itemAt(mosts, b))),
  })
    .filter((place) => isAllIn(place, isStanding))
    .flatMap((place): Strip[] => {
      const [a, b] = place.sides;
      const undercut = reachOf(a, place.from) + reachOf(b, place.to);
      const limit = Math.max(least, undercut);
      if (!isUnder(place.width, limit)) return [];
      const ridge = ridgeOf(place, measure);
      return [
        {
          width: place.width,
          limit,
          at: middleOf(place),
          regions: regionsBeside(making, place),
          outline: [wayPath(place)],
          undercut,
          figures: [undercut, ridge],
          ridge,
          base,
          wanted: Math.max(base, shallowestAt(making, middleOf(place))),
        },
      ];
    });
}

/** Level of the regions at a place, mm: on a border of the one that wants most metal left. */
function shallowestAt({ around }: MakingPlace, at: Point): number {
  const levels = around.regionsAt(at).map(({ level }) => level);
  return levels.length === 0 ? 0 : Math.min(...levels);
}

/** Places tried along the way; the ridge of two equal undercuts lies in its middle, which is one of them. */
const TRIED = 65;

function ridgeOf(place: NarrowPlace, measure: (point: Point) => number): number {
  let ridge = Number.POSITIVE_INFINITY;
  for (let i = 0; i < TRIED; i++) ridge = Math.min(ridge, measure(pointOn(place, i / (TRIED - 1))));
  return ridge;
}

/**
 * Floors that are not reached: parts of a region too narrow for an opening, so that the metal there stays shallower than its
 * tolerance; and regions that are mostly wall. A region with no opening at all is `opening-missing`, from the plan.
 */

import { type Finding, finding } from '#findings/finding.ts';
import { valueAt } from '#geometry/assert.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { groupNear } from '#geometry/near-values.ts';
import { SAME_SHARE, SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import type { RegionId } from '#part/part.ts';
import type { PlannedRegion } from '#plan/etch-plan.ts';
import { gatherNarrow, type NarrowFound } from './gather-narrow.ts';
import type { MakingPlace, PlaceRule, WholePlan } from './making.ts';
import { LEAST_FLOOR_SHARE } from './making-limits.ts';
import { middleOf } from './narrow-places.ts';
import { gaugeOf } from './standing-maskant.ts';
import { isAllIn, wayPath } from './way-across.ts';

interface FloorFound {
  readonly necks: readonly Neck[];
  readonly lost: readonly LostFloor[];
  readonly walls: readonly MostlyWall[];
}

export const floors: PlaceRule<FloorFound> = {
  find: (group) => {
    const found = { necks: closedNecks(group), lost: lostFloors(group), walls: mostlyWalls(group) };
    return Object.values(found).some(({ length }) => length > 0) ? [found] : [];
  },
  report: (found, whole) => [
    ...reportNecks(
      found.flatMap(({ necks }) => necks),
      whole,
    ),
    ...reportLost(
      found.flatMap(({ lost }) => lost),
      whole,
    ),
    ...reportWalls(
      found.flatMap(({ walls }) => walls),
      whole,
    ),
  ],
};

interface Neck extends NarrowFound {
  readonly regions: readonly [RegionId];
  readonly least: number;
  readonly depth: number;
}

function closedNecks(making: MakingPlace): Neck[] {
  const measure = gaugeOf(making);
  return making.necks().flatMap((place) => {
    const { region, width, limit } = place;
    const at = middleOf(place);
    const depth = measure(at);
    const least = region.asked.depth - region.asked.minus;
    if (least - depth <= SCRIBE_ACCURACY || !isAllIn(place, (point) => isInsideLoops(region.loops, point)))
      return [];
    return [
      { width, limit, at, regions: [region.id], outline: [wayPath(place)], figures: [depth], least, depth },
    ];
  });
}

function reportNecks(necks: readonly Neck[], { reached }: WholePlan): Finding[] {
  return gatherNarrow(necks).map(({ first, places, regions, outline }) => {
    const { width, limit, depth, least } = first;
    const { floorArea, share } = valueAt(reached, first.regions[0]);
    return finding(
      'floor-not-reached',
      { width, needed: limit, depth, least, floorArea, share, places },
      { at: first.at, regions, outline },
    );
  });
}

interface LostFloor {
  readonly region: RegionId;
  readonly shallowest: number;
}

/** Regions of which the walls of deeper neighbours leave nothing within tolerance. */
function lostFloors({ plan, reached, unopened }: MakingPlace): LostFloor[] {
  return plan.regions.flatMap((region) => {
    const { id, level } = region;
    const { shallowest } = valueAt(reached, id);
    if (level <= 0 || unopened.has(id) || shallowest <= mostIn(region) + SCRIBE_ACCURACY) return [];
    return [{ region: id, shallowest }];
  });
}

function mostIn({ level, asked }: PlannedRegion): number {
  return Math.max(level, asked.depth + asked.plus);
}

/** In the order of the part's regions. */
function reportLost(lost: readonly LostFloor[], { plan }: WholePlan): Finding[] {
  if (lost.length === 0) return [];
  const byRegion = new Map(lost.map((each) => [each.region, each]));
  return plan.regions.flatMap((region) => {
    const { id, label: at } = region;
    const found = byRegion.get(id);
    if (found === undefined) return [];
    const facts = { shallowest: found.shallowest, most: mostIn(region) };
    return [finding('floor-lost', facts, { at, regions: [id] })];
  });
}

interface MostlyWall {
  readonly region: RegionId;
  readonly share: number;
  readonly floorArea: number;
}

function mostlyWalls({ plan, reached, unopened }: MakingPlace): MostlyWall[] {
  return plan.regions.flatMap(({ id, level }) => {
    const { share, floorArea } = valueAt(reached, id);
    if (level <= 0 || unopened.has(id) || share >= LEAST_FLOOR_SHARE.value) return [];
    return [{ region: id, share, floorArea }];
  });
}

/** One finding a stage: the region with the least floor stands for all. */
function reportWalls(found: readonly MostlyWall[], { plan }: WholePlan): Finding[] {
  if (found.length === 0) return [];
  const byRegion = new Map(found.map((each) => [each.region, each]));
  return plan.stages.flatMap(({ number, level }) => {
    const walls = plan.regions.flatMap((region) => {
      const wall = region.level === level ? byRegion.get(region.id) : undefined;
      return wall === undefined ? [] : [{ ...wall, region }];
    });
    const least = leastFloor(walls);
    if (least === undefined) return [];
    const facts = {
      share: least.share,
      floorArea: least.floorArea,
      area: least.region.area,
      stage: number,
      regions: walls.length,
      limit: LEAST_FLOOR_SHARE.value,
    };
    const regions = walls.map(({ region }) => region.id).sort();
    return [finding('floor-mostly-wall', facts, { at: least.region.label, regions })];
  });
}

/** The region with the least floor for its area; among equals the largest. */
function leastFloor<Found extends { readonly share: number; readonly region: PlannedRegion }>(
  walls: readonly Found[],
): Found | undefined {
  const [least = []] = groupNear(walls, ({ share }) => share, SAME_SHARE);
  return [...least].sort((a, b) => b.region.area - a.region.area)[0];
}

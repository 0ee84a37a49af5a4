/**
 * Floors that are not reached: parts of a region too narrow for an opening, so that the metal there stays shallower than its
 * tolerance; and regions that are mostly wall. A region with no opening at all is `opening-missing`, from the plan.
 */

import { type Finding, finding } from '#findings/finding.ts';
import { itemAt, valueAt } from '#geometry/assert.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { groupNear } from '#geometry/near-values.ts';
import type { Span } from '#geometry/span.ts';
import { LEAST_OPENING, SAME_SHARE, SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import { allowance, throughAllowance } from '#plan/allowance.ts';
import type { PlannedRegion } from '#plan/etch-plan.ts';
import { gatherNarrow } from './gather-narrow.ts';
import type { MakingPlace } from './making.ts';
import { LEAST_FLOOR_SHARE } from './making-limits.ts';
import { middleOf, narrowPlaces, type Side, sidesOf } from './narrow-places.ts';
import { gaugeOf } from './standing-maskant.ts';
import { isAllIn, wayPath } from './way-across.ts';

export function checkFloor(making: MakingPlace): Finding[] {
  return [...closedNecks(making), ...lostFloors(making), ...mostlyWalls(making)];
}

interface Wall extends Side {
  readonly region: PlannedRegion;
  readonly width: number;
  /** Greatest sum with another wall of the region. */
  readonly widest: number;
}

function closedNecks(making: MakingPlace): Finding[] {
  const walls = making.plan.regions
    .filter(({ id }) => !making.unopened.has(id))
    .flatMap((region) => wallsOf(making, region));
  const measure = gaugeOf(making);
  const necks = narrowPlaces(walls, {
    widestOf: (side) => itemAt(walls, side).widest,
    limitOf: (a, b) => neckLimit(itemAt(walls, a), itemAt(walls, b)),
  }).flatMap((place) => {
    const [a, b] = place.sides;
    const { region } = itemAt(walls, a);
    const at = middleOf(place);
    const depth = measure(at);
    const short = region.asked.depth - region.asked.minus - depth;
    if (short <= SCRIBE_ACCURACY || !isAllIn(place, (point) => isInsideLoops(region.loops, point))) return [];
    const limit = itemAt(walls, a).width + itemAt(walls, b).width;
    return [
      {
        width: place.width,
        limit,
        at,
        regions: [region.id],
        outline: [wayPath(place)],
        figures: [depth],
        region,
        depth,
      },
    ];
  });
  return gatherNarrow(necks).map(({ first, places, regions, outline }) => {
    const { asked, id } = first.region;
    const { floorArea, share } = valueAt(making.reached, id);
    return finding(
      'floor-not-reached',
      {
        width: first.width,
        needed: first.limit,
        depth: first.depth,
        least: asked.depth - asked.minus,
        floorArea,
        share,
        places,
      },
      { at: first.at, regions, outline },
    );
  });
}

/** Two walls of one region need both allowances between them, and as much for the opening as distinguishes it from none. */
function neckLimit(a: Wall, b: Wall): number {
  return a.region === b.region ? a.width + b.width + LEAST_OPENING : 0;
}

/** Sides of a region that its opening has to keep back from. */
function wallsOf({ undercut, around }: MakingPlace, region: PlannedRegion): Wall[] {
  const {
    level,
    asked: { wall },
  } = region;
  const widthAt = (span: Span): number => {
    const depth = around.levelAcross(span);
    if (depth === undefined || depth >= level) return 0;
    return wall === undefined
      ? allowance(undercut, { level, depth })
      : throughAllowance(undercut, { level, wall });
  };
  const widths = new Map(region.loops.flat().map((span) => [span, widthAt(span)]));
  const sides = sidesOf(region.loops, (a, b) => widths.get(a) === widths.get(b))
    .map((side) => ({ ...side, region, width: widths.get(side.first) ?? 0 }))
    .filter(({ width }) => width > 0);
  const widest = sides.reduce((most, { width }) => Math.max(most, width), 0);
  return sides.map((side) => ({ ...side, widest: side.width + widest + LEAST_OPENING }));
}

/** Regions of which the walls of deeper neighbours leave nothing within tolerance. */
function lostFloors({ plan, reached, unopened }: MakingPlace): Finding[] {
  return plan.regions.flatMap(({ id, level, asked, label }) => {
    const { shallowest } = valueAt(reached, id);
    const most = Math.max(level, asked.depth + asked.plus);
    if (level <= 0 || unopened.has(id) || shallowest <= most + SCRIBE_ACCURACY) return [];
    return [finding('floor-lost', { shallowest, most }, { at: label, regions: [id] })];
  });
}

/** The region with the least floor for its area; among equals the largest. */
function leastFloor<Wall extends { readonly share: number; readonly region: PlannedRegion }>(
  walls: readonly Wall[],
): Wall | undefined {
  const [least = []] = groupNear(walls, ({ share }) => share, SAME_SHARE);
  return [...least].sort((a, b) => b.region.area - a.region.area)[0];
}

/** One finding a stage: the region with the least floor stands for all. */
function mostlyWalls({ plan, reached, unopened }: MakingPlace): Finding[] {
  return plan.stages.flatMap(({ number, level }) => {
    const walls = plan.regions
      .filter((region) => region.level === level && !unopened.has(region.id))
      .map((region) => ({ region, ...valueAt(reached, region.id) }))
      .filter(({ share }) => share < LEAST_FLOOR_SHARE.value);
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

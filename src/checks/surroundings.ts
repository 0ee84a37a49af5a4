/** What lies where on the part: the region at a point, built once for a part and when first asked for, and the level across a border span; both in linear time. */

import { itemAt } from '#geometry/assert.ts';
import { type AreaLocator, locateAreas } from '#geometry/loops/area-locator.ts';
import type { Point } from '#geometry/point.ts';
import { areSame } from '#geometry/same-items.ts';
import type { Loop, Span } from '#geometry/span.ts';
import { JUST_BESIDE } from '#geometry/tolerances.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';

export interface Surroundings {
  /** The region that holds a point; on a border any of its neighbours. */
  readonly regionAt: (point: Point) => PlannedRegion | undefined;
  /** All regions that hold a point or a place next to it: on a border, all that meet there. By id. */
  readonly regionsAt: (point: Point) => readonly PlannedRegion[];
}

export function lookAround(plan: Pick<EtchPlan, 'regions'>): Surroundings {
  const { regions } = plan;
  let known: AreaLocator | undefined;
  const areas = () => {
    known ??= locatorOf(regions.map(({ loops }) => loops));
    return known;
  };
  return {
    regionAt: (point) => regions[areas().at(point)],
    regionsAt: (point) => {
      const found = new Set([areas().at(point), ...areas().bordering(point, JUST_BESIDE)]);
      found.delete(-1);
      return [...found]
        .map((each) => itemAt(regions, each))
        .sort((one, other) => (one.id < other.id ? -1 : 1));
    },
  };
}

/** By the loops of the first area: plans of one part have the same areas, whatever their levels. */
const locators = new WeakMap<
  readonly Loop[],
  { readonly areas: readonly (readonly Loop[])[]; readonly locator: AreaLocator }
>();

function locatorOf(areas: readonly (readonly Loop[])[]): AreaLocator {
  const [first] = areas;
  const kept = first && locators.get(first);
  if (kept !== undefined && areSame(kept.areas, areas)) return kept.locator;
  const locator = locateAreas(areas);
  if (first !== undefined) locators.set(first, { areas, locator });
  return locator;
}

/** Level across a span of a region's border (the plan's own), mm; 0 for land, undefined where there is no metal. */
export type LevelAcross = (span: Span) => number | undefined;

/** @param own the regions whose spans will be asked about, with all their loops */
export function levelsAcross(
  { regions, regionOfFace, arrangement: { edges, faces }, sheet }: EtchPlan,
  own: readonly PlannedRegion[] = regions,
): LevelAcross {
  // Without a sheet the land goes on for ever, and its outer face is no region.
  const beyond = sheet.length === 0 ? 0 : undefined;
  const levels = new Map<Span, number | undefined>();
  for (const { face, loops } of own) {
    itemAt(faces, face).borders.forEach((border, loop) => {
      border.forEach(({ edge, forward }, at) => {
        const { left, right } = itemAt(edges, edge);
        const across = regions[itemAt(regionOfFace, forward ? right : left)];
        levels.set(itemAt(itemAt(loops, loop), at), across === undefined ? beyond : across.level);
      });
    });
  }
  return (span) => levels.get(span);
}

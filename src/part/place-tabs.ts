/**
 * Tabs across what is cut out (M9.9): strips of the region that stay masked on both faces, from one side of it to the other, square to
 * the border that is nearest to the place. The rest of the region goes as asked. Parts are named as those of a taper: the cut ones
 * first, then the tabs. Places that the job leaves open are chosen on the near face, and are those of the far one too.
 */
import { type Finding, finding } from '#findings/finding.ts';
import { cutFrame } from '#geometry/loops/cut-across.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { dot, type Point } from '#geometry/point.ts';
import { distanceToSpan, type LineSpan, nearestShare, pointAlong, tangentAlong } from '#geometry/span.ts';
import type { Tabs } from '#job/tabs.ts';
import { chooseTabs, FEWEST_TABS, TAB_APART } from './choose-tabs.ts';
import type { Asked, Part, Region, RegionId } from './part.ts';
import { type RegionCuts, splitRegions } from './split-regions.ts';

export interface TabbedPart {
  readonly part: Part;
  readonly asked: ReadonlyMap<RegionId, Asked>;
  /** Findings: `tab-misses-cut`, `tabs-placed`. */
  readonly findings: readonly Finding[];
}

interface Tab {
  readonly cuts: readonly [LineSpan, LineSpan];
  /** In the middle of the strip. */
  readonly middle: Point;
}

/** Places chosen for the tabs of a requirement. */
export type TabPlaces = Map<Tabs, Point[]>;

/** @param chosen by the near face, for the far one; filled in */
export function placeTabs(
  part: Part,
  asked: ReadonlyMap<RegionId, Asked>,
  chosen: TabPlaces = new Map(),
): TabbedPart {
  const isChosen = new Set(chosen.keys());
  const findings: Finding[] = [];
  const tabsOf = new Map<RegionId, readonly Tab[]>();
  for (const region of part.regions) {
    const tabs = asked.get(region.id)?.tabs;
    if (tabs === undefined) continue;
    const own = isChosen.has(tabs) ? undefined : chosenIn(region, tabs, chosen);
    if (own !== undefined) findings.push(...own.findings);
    const places = tabs.at ?? own?.at ?? chosen.get(tabs) ?? [];
    const placed = places.flatMap((at) => {
      const tab = tabAt(region, at, tabs.width);
      if (tab !== undefined) return [tab];
      // A layer's requirement has the tabs of all of its regions: a place in another of them is that one's.
      const isOthers = part.regions.some(
        ({ id, loops }) => id !== region.id && asked.get(id)?.tabs === tabs && isInsideLoops(loops, at),
      );
      if (isOthers) return [];
      const facts = { at: [at.x, at.y] as const, limit: tabs.width };
      findings.push(finding('tab-misses-cut', facts, { at, regions: [region.id] }));
      return [];
    });
    if (placed.length > 0) tabsOf.set(region.id, placed);
  }
  if (tabsOf.size === 0) return { part, asked, findings };
  const cutsOf = new Map(
    [...tabsOf].map(([id, tabs]): [RegionId, RegionCuts] => [
      id,
      {
        cuts: tabs.flatMap(({ cuts }) => cuts),
        rank: (loops) => (tabs.some(({ middle }) => isInsideLoops(loops, middle)) ? 1 : 0),
      },
    ]),
  );
  const split = splitRegions(part, cutsOf);
  return { part: split.part, asked: askedOfParts(asked, tabsOf, split.partsOf), findings };
}

/** Undefined where the job names the places. Finding: `tabs-placed`. */
function chosenIn(
  region: Region,
  tabs: Tabs,
  chosen: TabPlaces,
): { readonly at: readonly Point[]; readonly findings: readonly Finding[] } | undefined {
  if (tabs.at !== undefined) return undefined;
  const { at, length } = chooseTabs(
    region.loops,
    tabs,
    (place) => tabAt(region, place, tabs.width) !== undefined,
  );
  chosen.set(tabs, [...(chosen.get(tabs) ?? []), ...at]);
  if (at.length === 0) return { at, findings: [] };
  const facts = {
    tabs: at.length,
    width: tabs.width,
    length,
    isCounted: tabs.count !== undefined,
    apart: TAB_APART.value,
    fewest: FEWEST_TABS.value,
  };
  const place = { at: region.label, regions: [region.id] };
  return { at, findings: [finding('tabs-placed', facts, place)] };
}

/** What is asked of a region is asked of its parts, but of its tabs, which are land. */
function askedOfParts(
  asked: ReadonlyMap<RegionId, Asked>,
  tabsOf: ReadonlyMap<RegionId, readonly Tab[]>,
  partsOf: ReadonlyMap<RegionId, readonly Region[]>,
): ReadonlyMap<RegionId, Asked> {
  return new Map(
    [...asked].flatMap(([id, each]) => {
      const parts = partsOf.get(id);
      if (parts === undefined) return [[id, each] as const];
      const isTab = ({ loops }: Region) =>
        (tabsOf.get(id) ?? []).some(({ middle }) => isInsideLoops(loops, middle));
      return parts.filter((one) => !isTab(one)).map((one) => [one.id, each] as const);
    }),
  );
}

/** Undefined where the place is not on the region, give or take the tab's width, or no strip leads across there. */
function tabAt({ loops }: Region, at: Point, width: number): Tab | undefined {
  const spans = loops.flat();
  const nearest = spans.reduce((best, span) =>
    distanceToSpan(span, at) < distanceToSpan(best, at) ? span : best,
  );
  if (!isInsideLoops(loops, at) && distanceToSpan(nearest, at) > width) return undefined;
  const along = tangentAlong(nearest, nearestShare(nearest, at));
  const { cutsAt } = cutFrame(loops, along);
  const place = dot(at, along);
  const [one, other] = [place - width / 2, place + width / 2].map((position) =>
    nearestCut(cutsAt(position), at, width),
  );
  if (one === undefined || other === undefined) return undefined;
  const [a, b] = [pointAlong(one, 0.5), pointAlong(other, 0.5)];
  return { cuts: [one, other], middle: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 } };
}

function nearestCut(cuts: readonly LineSpan[], at: Point, within: number): LineSpan | undefined {
  return cuts
    .filter((cut) => distanceToSpan(cut, at) <= 2 * within)
    .sort((a, b) => distanceToSpan(a, at) - distanceToSpan(b, at))[0];
}

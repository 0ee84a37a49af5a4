/**
 * Tabs across what is cut out (M9.9): strips of the region that stay masked on both faces, from one side of it to the other, square to
 * the border that is nearest to the place. The rest of the region goes as asked. Parts are named as those of a taper: the cut ones
 * first, then the tabs.
 */
import { type Finding, finding } from '#findings/finding.ts';
import { cutFrame } from '#geometry/loops/cut-across.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { dot, type Point } from '#geometry/point.ts';
import { distanceToSpan, type LineSpan, nearestShare, pointAlong, tangentAlong } from '#geometry/span.ts';
import type { Asked, Part, Region, RegionId } from './part.ts';
import { type RegionCuts, splitRegions } from './split-regions.ts';

export interface TabbedPart {
  readonly part: Part;
  readonly asked: ReadonlyMap<RegionId, Asked>;
  /** Finding: `tab-misses-cut`. */
  readonly findings: readonly Finding[];
}

interface Tab {
  readonly cuts: readonly [LineSpan, LineSpan];
  /** In the middle of the strip. */
  readonly middle: Point;
}

export function placeTabs(part: Part, asked: ReadonlyMap<RegionId, Asked>): TabbedPart {
  const findings: Finding[] = [];
  const tabsOf = new Map<RegionId, readonly Tab[]>();
  for (const region of part.regions) {
    const tabs = asked.get(region.id)?.tabs;
    if (tabs === undefined) continue;
    const placed = tabs.at.flatMap((at) => {
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

/**
 * What lies where on the part: the region across a border span, and the region at a point. Built once for a plan; both
 * faces of a line have the same ends bit for bit, so that looking across is a look-up. Cost: linear in the spans.
 */
import { type InsideIndex, isInside, makeInsideIndex } from '#front/inside-index.ts';
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfPoints, boxOfSpan, boxOfSpans, growBox } from '#geometry/box.ts';
import { type BoxIndex, indexBoxes } from '#geometry/box-index.ts';
import { isInsideLoops } from '#geometry/inside-loops.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, type Span } from '#geometry/span.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';

export interface Surroundings {
  /** Level across a span of a region's border (the plan's own), mm; 0 for land, undefined where there is no metal. */
  readonly levelAcross: (span: Span) => number | undefined;
  /** The region that holds a point; on a border any of its neighbours. */
  readonly regionAt: (point: Point) => PlannedRegion | undefined;
  /** All regions that hold a point or a place next to it: on a border, all that meet there. By id. */
  readonly regionsAt: (point: Point) => readonly PlannedRegion[];
}

interface Known {
  readonly span: Span;
  /** Of the region on its left. */
  readonly level: number;
}

export function lookAround({ regions, sheet }: EtchPlan): Surroundings {
  // Without a sheet the land goes on for ever, and its outer face is no region.
  const levels = levelsAcross(regions, sheet.length === 0 ? 0 : undefined);
  const index = indexBoxes(regions.map(({ loops }): Box => boxOfSpans(loops.flat())));
  const counts = regions.map(({ loops }) => loops.reduce((sum, loop) => sum + loop.length, 0));
  const isIn = insideTests(regions, counts);
  const spanCount = (region: number) => itemAt(counts, region);
  const bordering = borderFinder(regions);
  const regionAt = (point: Point) => {
    const boxed = index.meeting(boxOfPoints([point])).sort((a, b) => spanCount(a) - spanCount(b));
    return regions[boxed.find((each) => isIn(each, point)) ?? -1];
  };
  return {
    levelAcross: (span) => levels.get(span),
    regionAt,
    regionsAt: (point) => {
      const found = new Set(bordering(point));
      const own = regionAt(point);
      if (own !== undefined) found.add(own);
      return [...found].sort((one, other) => (one.id < other.id ? -1 : 1));
    },
  };
}

/** How far round a point is looked for what meets there, mm: more than any rounding, less than anything that is made. */
const NEXT_TO = 0.001;

/** Finds the regions whose border passes a point; the borders are indexed when first asked about. */
function borderFinder(regions: readonly PlannedRegion[]): (point: Point) => PlannedRegion[] {
  let borders:
    | { readonly spans: readonly (readonly [Span, PlannedRegion])[]; readonly index: BoxIndex }
    | undefined;
  return (point) => {
    if (borders === undefined) {
      const spans = regions.flatMap((region) => region.loops.flat().map((span) => [span, region] as const));
      borders = { spans, index: indexBoxes(spans.map(([span]) => growBox(boxOfSpan(span), NEXT_TO))) };
    }
    const { spans, index } = borders;
    return index.meeting(boxOfPoints([point])).flatMap((each) => {
      const [span, region] = itemAt(spans, each);
      return distanceToSpan(span, point) <= NEXT_TO ? [region] : [];
    });
  };
}

function levelsAcross(
  regions: readonly PlannedRegion[],
  beyond: number | undefined,
): ReadonlyMap<Span, number | undefined> {
  const alike = new Map<number, Known[]>();
  const levels = new Map<Span, number | undefined>();
  for (const { level, loops } of regions) {
    for (const span of loops.flat()) {
      levels.set(span, beyond);
      const known = { span, level };
      const key = keyOf(span, sweepOf(span), span.start, span.end);
      const others = alike.get(keyOf(span, -sweepOf(span), span.end, span.start)) ?? [];
      const other = others.find((each) => isReversed(span, each.span));
      if (other !== undefined) {
        levels.set(span, other.level);
        levels.set(other.span, level);
      }
      const same = alike.get(key);
      if (same === undefined) alike.set(key, [known]);
      else same.push(known);
    }
  }
  return levels;
}

/** Land round hundreds of pockets has thousands of spans: such borders are indexed when first asked about. */
const MANY_SPANS = 64;

function insideTests(
  regions: readonly PlannedRegion[],
  counts: readonly number[],
): (region: number, point: Point) => boolean {
  const indices: InsideIndex[] = [];
  return (number, point) => {
    const loops = regions[number]?.loops ?? [];
    if (itemAt(counts, number) < MANY_SPANS) return isInsideLoops(loops, point);
    const index = indices[number] ?? makeInsideIndex(loops);
    indices[number] = index;
    return isInside(index, point.x, point.y);
  };
}

function sweepOf(span: Span): number {
  return span.kind === 'arc' ? span.sweep : 0;
}

/** Any number that is different for most spans: candidates are compared in full. */
function keyOf(span: Span, sweep: number, start: Point, end: Point): number {
  const bend = span.kind === 'arc' ? sweep * span.radius : 0;
  return start.x * 0.7548 + start.y * 0.5698 + end.x * 1.3247 + end.y * 1.7549 + bend;
}

function isReversed(a: Span, b: Span): boolean {
  return (
    a.start.x === b.end.x &&
    a.start.y === b.end.y &&
    a.end.x === b.start.x &&
    a.end.y === b.start.y &&
    sweepOf(a) === -sweepOf(b)
  );
}

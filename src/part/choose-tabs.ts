/**
 * Where tabs stand if the job names no places (M9.9): evenly along the border of what the cut goes all round, turned so that the nearest of
 * them to a corner is as far from it as can be. They begin from the leftmost place of that border, so that nothing depends on how it is drawn.
 * A cut that goes round nothing needs none.
 */
import { dot, type Point, pointOnCircle } from '#geometry/point.ts';
import {
  distanceToSpan,
  type Loop,
  loopArea,
  nearestShare,
  pointAlong,
  type Span,
  spanLength,
  spansLength,
  tangentAlong,
} from '#geometry/span.ts';
import { SAME_POINT } from '#geometry/tolerances.ts';
import { fromMemory } from '#job/sources.ts';
import type { Tabs } from '#job/tabs.ts';

/** mm of border to each tab, and fewest that keep a part from turning about two. */
export const TAB_APART = fromMemory(50);
export const FEWEST_TABS = fromMemory(3);

export interface ChosenTabs {
  readonly at: readonly Point[];
  /** Border that they hold, mm. */
  readonly length: number;
}

/** Turns tried, over one distance between tabs. */
const TURNS = 48;
/** Cosine of the turn from which a border has a corner: 10°. */
const CORNER = 0.985;

/** @param canStand whether a strip leads across the cut at a place */
export function chooseTabs(
  loops: readonly Loop[],
  { width, count }: Pick<Tabs, 'width' | 'count'>,
  canStand: (at: Point) => boolean,
): ChosenTabs {
  const held = loops.filter((loop) => loopArea(loop) < 0);
  return {
    at: held.flatMap((loop) => placesAlong(loop, { width, count: count ?? usualCount(loop) }, canStand)),
    length: held.reduce((sum, loop) => sum + spansLength(loop), 0),
  };
}

function usualCount(loop: Loop): number {
  return Math.max(FEWEST_TABS.value, Math.ceil(spansLength(loop) / TAB_APART.value - SAME_POINT));
}

function placesAlong(
  loop: Loop,
  { width, count }: { readonly width: number; readonly count: number },
  canStand: (at: Point) => boolean,
): Point[] {
  const length = spansLength(loop);
  const apart = length / count;
  const first = leftmost(loop);
  const bends = bendsOf(loop, width);
  let best:
    | { readonly places: readonly Point[]; readonly standing: number; readonly clear: number }
    | undefined;
  for (let turn = 0; turn < TURNS; turn++) {
    const along = Array.from({ length: count }, (_, tab) => (first + apart * (tab + turn / TURNS)) % length);
    const places = along.map((each) => placeAt(loop, each));
    const standing = places.filter(canStand).length;
    const clear = Math.min(2 * width, ...along.map((each) => gapTo(bends, each, length)));
    const isBetter =
      best === undefined ||
      standing > best.standing ||
      (standing === best.standing && clear > best.clear + SAME_POINT);
    if (isBetter) best = { places, standing, clear };
  }
  return [...(best?.places ?? [])];
}

/** How far along the loop its leftmost place is, of two the lower one. */
function leftmost(loop: Loop): number {
  let from = 0;
  let best: { readonly at: Point; readonly along: number } | undefined;
  for (const span of loop) {
    for (const at of [span.start, ...leftOfArc(span)]) {
      const isBetter =
        best === undefined ||
        at.x < best.at.x - SAME_POINT ||
        (at.x < best.at.x + SAME_POINT && at.y < best.at.y);
      if (isBetter) best = { at, along: from + nearestShare(span, at) * spanLength(span) };
    }
    from += spanLength(span);
  }
  return best?.along ?? 0;
}

function leftOfArc(span: Span): Point[] {
  if (span.kind === 'line') return [];
  const at = pointOnCircle(span.center, span.radius, Math.PI);
  return distanceToSpan(span, at) < SAME_POINT ? [at] : [];
}

interface Bend {
  readonly from: number;
  readonly to: number;
}

/** Corners, and arcs so tight that a tab on them would be no strip. */
function bendsOf(loop: Loop, width: number): Bend[] {
  const bends: Bend[] = [];
  let from = 0;
  loop.forEach((span, index) => {
    const to = from + spanLength(span);
    const next = loop[(index + 1) % loop.length] ?? span;
    if (dot(tangentAlong(span, 1), tangentAlong(next, 0)) < CORNER) bends.push({ from: to, to });
    if (span.kind === 'arc' && span.radius < 2 * width) bends.push({ from, to });
    from = to;
  });
  return bends;
}

/** Along a closed border; 0 within a bend. */
function gapTo(bends: readonly Bend[], at: number, length: number): number {
  return bends.reduce((least, { from, to }) => {
    if (at >= from && at <= to) return 0;
    const gaps = [from, to].map((end) => {
      const gap = Math.abs(at - end) % length;
      return Math.min(gap, length - gap);
    });
    return Math.min(least, ...gaps);
  }, Number.POSITIVE_INFINITY);
}

function placeAt(loop: Loop, along: number): Point {
  let left = along;
  for (const span of loop) {
    const length = spanLength(span);
    if (left <= length) return pointAlong(span, left / length);
    left -= length;
  }
  return loop[0]?.start ?? { x: 0, y: 0 };
}

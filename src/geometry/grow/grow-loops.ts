/** Round growing and booleans of exact areas: what touches the grid goes in exact and comes out exact. */

import { type Loop, reverseSpans, type Span } from '#geometry/span.ts';
import type { Carrier } from './carrier-finder.ts';
import {
  combinePolygons,
  gridOrigin,
  gridPolygonOf,
  type PolygonOperation,
  positivelyWound,
} from './grid-polygons.ts';
import { pushBorder } from './push-border.ts';
import { rebuildLoops, spansOf } from './rebuild-loops.ts';

/**
 * All points within `by` of the area: outlines rounded, overlaps united.
 * @param loops disjoint area, outer loops counter-clockwise, holes clockwise
 * @param by millimetres, not negative
 */
export function growLoops(loops: readonly Loop[], by: number): Loop[] {
  if (by === 0 || loops.length === 0) return [...loops];
  // Growing the area is pushing its border into what lies outside, which the reversed loops have on their left.
  const pushed = loops.map((loop) => pushBorder(reverseSpans(loop).map((span) => ({ span, width: by }))));
  const origin = gridOrigin(loops.flat());
  const polygons = pushed.flatMap(({ chains }) =>
    chains.map((chain) => gridPolygonOf(reverseSpans(chain), origin)),
  );
  const carriers = pushed.flatMap((each) => each.carriers).map(asNew);
  return rebuildLoops(positivelyWound(polygons), carriers, origin).map(spansOf);
}

/**
 * All points of the area that are `by` or more from its border: outside corners stay sharp, inside ones come out round.
 * @param loops disjoint area, outer loops counter-clockwise, holes clockwise
 * @param by millimetres, not negative
 */
export function shrinkLoops(loops: readonly Loop[], by: number): Loop[] {
  if (by === 0 || loops.length === 0) return [...loops];
  const pushed = loops.map((loop) => pushBorder(loop.map((span) => ({ span, width: by }))));
  const origin = gridOrigin(loops.flat());
  const polygons = pushed.flatMap(({ chains }) => chains.map((chain) => gridPolygonOf(chain, origin)));
  return rebuildLoops(
    positivelyWound(polygons),
    pushed.flatMap(({ carriers }) => carriers).map(asNew),
    origin,
  ).map(spansOf);
}

/** Union, difference or intersection of two areas, each given as loops read by the non-zero rule. */
export function combineLoops(operation: PolygonOperation, a: readonly Loop[], b: readonly Loop[]): Loop[] {
  const spans = [...a.flat(), ...b.flat()];
  const origin = gridOrigin(spans);
  const polygonsOf = (loops: readonly Loop[]) => loops.map((loop) => gridPolygonOf(loop, origin));
  return rebuildLoops(combinePolygons(operation, polygonsOf(a), polygonsOf(b)), spans.map(asNew), origin).map(
    spansOf,
  );
}

function asNew(span: Span): Carrier {
  return { span, isKnown: false };
}

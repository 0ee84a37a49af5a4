/** Round growing and booleans of exact areas: what touches the grid goes in exact and comes out exact. */
import { pushBorder } from './push-border.ts';
import { type Carrier, rebuildLoops, spansOf } from './rebuild-loops.ts';
import { combineRings, gridOrigin, positivelyWound, type RingOperation, ringOf } from './rings.ts';
import { type Loop, reverseSpans, type Span } from './span.ts';

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
  const rings = pushed.flatMap(({ chains }) => chains.map((chain) => ringOf(reverseSpans(chain), origin)));
  const carriers = pushed.flatMap((each) => each.carriers).map(asNew);
  return rebuildLoops(positivelyWound(rings), carriers, origin).map(spansOf);
}

/** Union, difference or intersection of two areas, each given as loops read by the non-zero rule. */
export function combineLoops(operation: RingOperation, a: readonly Loop[], b: readonly Loop[]): Loop[] {
  const spans = [...a.flat(), ...b.flat()];
  const origin = gridOrigin(spans);
  const ringsOf = (loops: readonly Loop[]) => loops.map((loop) => ringOf(loop, origin));
  return rebuildLoops(combineRings(operation, ringsOf(a), ringsOf(b)), spans.map(asNew), origin).map(spansOf);
}

function asNew(span: Span): Carrier {
  return { span, isKnown: false };
}

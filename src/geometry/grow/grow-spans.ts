/** All points within a distance of some lines and arcs, wherever these lie: a band along them, round at ends and corners. */

import { type Loop, reverseSpan, reverseSpans, type Span } from '#geometry/span.ts';
import { gridOrigin, gridPolygonOf, positivelyWound } from './grid-polygons.ts';
import { pushAlone } from './push-border.ts';
import { rebuildLoops, spansOf } from './rebuild-loops.ts';

/** @param by millimetres, more than 0 */
export function growSpans(spans: readonly Span[], by: number): Loop[] {
  if (spans.length === 0) return [];
  const pushed = spans
    .flatMap((span) => [span, reverseSpan(span)])
    .map((span) => pushAlone({ span, width: by }));
  const origin = gridOrigin(spans);
  // Pushing takes turns away; the reversed chains give them.
  const polygons = pushed.flatMap(({ chains }) =>
    chains.map((chain) => gridPolygonOf(reverseSpans(chain), origin)),
  );
  const carriers = pushed.flatMap((each) => each.carriers).map((span) => ({ span, isKnown: false }));
  return rebuildLoops(positivelyWound(polygons), carriers, origin).map(spansOf);
}

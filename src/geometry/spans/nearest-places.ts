/** Where two sets of spans come nearest to each other: exact for lines and arcs. Cost: n log n, and the pairs that are near. */

import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpan, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { distance, type Point } from '#geometry/point.ts';
import { nearestShare, pointAlong, type Span } from '#geometry/span.ts';
import { meetSpans } from './meet-spans.ts';
import { normalPoints } from './span-gap.ts';

export interface NearestPlaces {
  readonly gap: number;
  /** On a span of the first set, and on one of the second. */
  readonly from: Point;
  readonly to: Point;
}

/** Undefined where none is nearer than `within`, mm. */
export function nearestPlaces(
  ones: readonly Span[],
  others: readonly Span[],
  within: number,
): NearestPlaces | undefined {
  const index = indexBoxes(others.map(boxOfSpan));
  let best: NearestPlaces | undefined;
  for (const one of ones) {
    const reach = best?.gap ?? within;
    const near: Box = growBox(boxOfSpan(one), reach);
    for (const other of index.meeting(near)) {
      const found = nearestOf(one, itemAt(others, other));
      if (found.gap < (best?.gap ?? within)) best = found;
      if (best?.gap === 0) return best;
    }
  }
  return best;
}

function nearestOf(a: Span, b: Span): NearestPlaces {
  const [meeting] = meetSpans(a, b).map(({ point }) => point);
  if (meeting !== undefined) return { gap: 0, from: meeting, to: meeting };
  const there = nearestFrom(a, b);
  const back = nearestFrom(b, a);
  return there.gap <= back.gap ? there : { gap: back.gap, from: back.to, to: back.from };
}

/** From the ends of a span, and, where it is an arc, from where its radius points along the common normal. */
function nearestFrom(from: Span, to: Span): NearestPlaces {
  return [from.start, from.end, ...normalPoints(from, to)]
    .map((place) => {
      const across = pointAlong(to, nearestShare(to, place));
      return { gap: distance(place, across), from: place, to: across };
    })
    .reduce((best, each) => (each.gap < best.gap ? each : best));
}

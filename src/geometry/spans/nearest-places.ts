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

/** mm: places so much farther are as near. */
const AS_NEAR = 1e-6;

/** All places that are as near as any, the nearest first; none where none is nearer than `within`, mm. */
export function nearestPlaces(
  ones: readonly Span[],
  others: readonly Span[],
  within: number,
): readonly NearestPlaces[] {
  const index = indexBoxes(others.map(boxOfSpan));
  let least = within;
  const found: NearestPlaces[] = [];
  for (const one of ones) {
    const near: Box = growBox(boxOfSpan(one), least + AS_NEAR);
    for (const other of index.meeting(near)) {
      for (const each of waysBetween(one, itemAt(others, other))) {
        if (each.gap >= within || each.gap > least + AS_NEAR) continue;
        least = Math.min(least, each.gap);
        found.push(each);
      }
    }
  }
  return found.filter(({ gap }) => gap <= least + AS_NEAR).sort((a, b) => a.gap - b.gap);
}

/** Where two spans meet; else from each one's ends and common normals to the other. */
function waysBetween(a: Span, b: Span): NearestPlaces[] {
  const meeting = meetSpans(a, b).map(({ point }) => ({ gap: 0, from: point, to: point }));
  if (meeting.length > 0) return meeting;
  return [...waysFrom(a, b), ...waysFrom(b, a).map(({ gap, from, to }) => ({ gap, from: to, to: from }))];
}

/** From the ends of a span, and, where it is an arc, from where its radius points along the common normal. */
function waysFrom(from: Span, to: Span): NearestPlaces[] {
  return [from.start, from.end, ...normalPoints(from, to)].map((place) => {
    const across = pointAlong(to, nearestShare(to, place));
    return { gap: distance(place, across), from: place, to: across };
  });
}

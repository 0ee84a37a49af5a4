/** A finding of linework that was moved to a local origin, given in the drawing's own frame, or the other way round. */

import type { Point } from '#geometry/point.ts';
import { movePath, movePoint } from '#geometry/spans/move-spans.ts';
import type { Finding, Place } from './finding.ts';

/** Its place, and a place among its facts. */
export function moveFinding(found: Finding, by: Point): Finding {
  const facts: object = found.facts;
  const at = 'at' in facts ? facts.at : undefined;
  const isPlace = Array.isArray(at) && at.length === 2;
  const moved = isPlace ? { ...facts, at: [Number(at[0]) + by.x, Number(at[1]) + by.y] } : facts;
  return { ...found, facts: moved, place: movePlace(found.place, by) } as Finding;
}

export function movePlace(place: Place, by: Point): Place {
  return {
    ...place,
    ...(place.at === undefined ? {} : { at: movePoint(place.at, by) }),
    ...(place.outline === undefined ? {} : { outline: place.outline.map((path) => movePath(path, by)) }),
  };
}

/**
 * Arcs cut where they come nearest to other borders, so that their chords on the grid reach just as far there: whether two
 * borders meet is then decided by the arcs, not by where their chords happen to begin. Cost: arcs × borders within two
 * chords' sagitta of them, found by box.
 */

import { itemAt } from '#geometry/assert.ts';
import { boxOfSpan, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { distance, type Point, scale, subtract, turnLeft } from '#geometry/point.ts';
import {
  type ArcSpan,
  distanceToSpan,
  type Loop,
  nearestShare,
  pointAlong,
  type Span,
  tangentAlong,
} from '#geometry/span.ts';
import { NEAR_ON_GRID, SAGITTA } from '#geometry/tolerances.ts';

/** The same chains with more corners on their arcs. */
export function cornerArcs(chains: readonly Loop[]): Loop[] {
  const spans = chains.flat();
  if (!spans.some(({ kind }) => kind === 'arc')) return [...chains];
  const index = indexBoxes(spans.map((span) => growBox(boxOfSpan(span), NEAR_ON_GRID)));
  return chains.map((chain) =>
    chain.flatMap((span): Span[] => {
      if (span.kind === 'line') return [span];
      const others = index.meeting(boxOfSpan(span)).map((each) => itemAt(spans, each));
      return cutArc(
        span,
        others.flatMap((other) => (other === span ? [] : nearestShares(span, other))),
      );
    }),
  );
}

/** Shares of the arc at which it faces another border that is near there. */
function nearestShares(arc: ArcSpan, other: Span): number[] {
  const towards = facing(arc, other);
  if (towards === undefined) return [];
  const length = arc.radius * Math.abs(arc.sweep);
  return [1, -1].flatMap((side) => {
    const reach = side * arc.radius;
    const at = { x: arc.center.x + reach * towards.x, y: arc.center.y + reach * towards.y };
    const share = nearestShare(arc, at);
    if (share * length < SAGITTA || (1 - share) * length < SAGITTA) return [];
    return distance(at, pointAlong(arc, share)) < SAGITTA && distanceToSpan(other, at) < NEAR_ON_GRID
      ? [share]
      : [];
  });
}

/** The direction from the arc's centre in which the other border is nearest; undefined for one round the same centre. */
function facing(arc: ArcSpan, other: Span): Point | undefined {
  if (other.kind === 'line') return turnLeft(tangentAlong(other, 0));
  const way = subtract(other.center, arc.center);
  const far = distance(other.center, arc.center);
  return far < NEAR_ON_GRID ? undefined : scale(way, 1 / far);
}

function cutArc(arc: ArcSpan, shares: readonly number[]): Span[] {
  const stops = [...new Set(shares)].sort((a, b) => a - b);
  const pieces: Span[] = [];
  let from = 0;
  let start = arc.start;
  for (const share of [...stops, 1]) {
    const end = share === 1 ? arc.end : pointAlong(arc, share);
    pieces.push({ ...arc, start, end, sweep: arc.sweep * (share - from) });
    from = share;
    start = end;
  }
  return pieces;
}

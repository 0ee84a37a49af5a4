/**
 * Where a level's piece may lie (M3.2): its own regions, and of the deeper ones the margin in which they had to stay
 * back from it. Elsewhere in the deeper regions a larger opening would be safe but would only cost a second line.
 */

import type { GridPolygon } from '#geometry/grid-polygon.ts';
import { traceBorder } from '#geometry/half-edges.ts';
import type { Point } from '#geometry/point.ts';
import { pushBorder } from '#geometry/push-border.ts';
import type { Carrier } from '#geometry/rebuild-loops.ts';
import { combineRings, positivelyWound, ringOf } from '#geometry/rings.ts';
import { type Loop, reverseSpans } from '#geometry/span.ts';
import type { Cluster } from './find-clusters.ts';
import type { LevelField } from './largest-opening.ts';

export interface PieceZone {
  readonly rings: readonly GridPolygon[];
  readonly carriers: readonly Carrier[];
}

/** @param allowanceFrom allowance that an opening of the given deeper level keeps from this level's regions, mm */
export function pieceZone(
  field: LevelField,
  cluster: Cluster,
  level: number,
  allowanceFrom: ReadonlyMap<number, number>,
  origin: Point,
): PieceZone {
  const own = bordersOf(field, cluster, level);
  const spans = own.flat();
  let rings: readonly GridPolygon[] = own.map((loop) => ringOf(loop, origin));
  if (own.length === 0) return { rings, carriers: [] };
  for (const [deeper, width] of allowanceFrom) {
    const there = bordersOf(field, cluster, deeper);
    for (const loop of there) for (const span of loop) spans.push(span);
    const margin = own.map((loop) => pushBorder(reverseSpans(loop).map((span) => ({ span, width }))));
    for (const { carriers } of margin) for (const span of carriers) spans.push(span);
    const grown = positivelyWound(
      margin.flatMap(({ chains }) => chains.map((chain) => ringOf(reverseSpans(chain), origin))),
    );
    const inside = combineRings(
      'intersect',
      grown,
      there.map((loop) => ringOf(loop, origin)),
    );
    rings = combineRings('unite', rings, inside);
  }
  return { rings, carriers: spans.map((span) => ({ span, isKnown: false })) };
}

/** Borders of all regions of exactly one level, as loops. */
function bordersOf({ walk, levels }: LevelField, cluster: Cluster, level: number): Loop[] {
  const chains = traceBorder(walk, cluster.halfEdges, (face) => levels[face] === level);
  return chains.map((chain) => chain.map((halfEdge) => walk.spanOf(halfEdge)));
}

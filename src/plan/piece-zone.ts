/**
 * Where a level's piece may lie (M3.2): its own regions, and of the deeper ones the margin in which they had to stay
 * back from it. Elsewhere in the deeper regions a larger opening would be safe but would only cost a second line.
 */

import { traceBorder } from '#geometry/arrangement/half-edges.ts';
import type { GridPolygon } from '#geometry/grow/grid-polygon.ts';
import { combinePolygons, gridPolygonOf, positivelyWound } from '#geometry/grow/grid-polygons.ts';
import { pushBorder } from '#geometry/grow/push-border.ts';
import type { Carrier } from '#geometry/grow/rebuild-loops.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, reverseSpans } from '#geometry/span.ts';
import type { Cluster } from './find-clusters.ts';
import type { LevelField } from './largest-opening.ts';

export interface PieceZone {
  readonly polygons: readonly GridPolygon[];
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
  let polygons: readonly GridPolygon[] = own.map((loop) => gridPolygonOf(loop, origin));
  if (own.length === 0) return { polygons, carriers: [] };
  for (const [deeper, width] of allowanceFrom) {
    const there = bordersOf(field, cluster, deeper);
    for (const loop of there) for (const span of loop) spans.push(span);
    const margin = own.map((loop) => pushBorder(reverseSpans(loop).map((span) => ({ span, width }))));
    for (const { carriers } of margin) for (const span of carriers) spans.push(span);
    const grown = positivelyWound(
      margin.flatMap(({ chains }) => chains.map((chain) => gridPolygonOf(reverseSpans(chain), origin))),
    );
    const inside = combinePolygons(
      'intersect',
      grown,
      there.map((loop) => gridPolygonOf(loop, origin)),
    );
    polygons = combinePolygons('unite', polygons, inside);
  }
  return { polygons, carriers: spans.map((span) => ({ span, isKnown: false })) };
}

/** Borders of all regions of exactly one level, as loops. */
function bordersOf({ walk, levels }: LevelField, cluster: Cluster, level: number): Loop[] {
  const chains = traceBorder(walk, cluster.halfEdges, (face) => levels[face] === level);
  return chains.map((chain) => chain.map((halfEdge) => walk.spanOf(halfEdge)));
}

/**
 * Where a level's piece may lie (M3.2): its own regions, and of the deeper ones the margin in which they had to stay
 * back from it. Elsewhere in the deeper regions a larger opening would be safe but would only cost a second line.
 */

import { traceBorder } from '#geometry/arrangement/half-edges.ts';
import { type Box, boxesMeet, boxOfSpans, growBox } from '#geometry/box.ts';
import type { Carrier } from '#geometry/grow/carrier-finder.ts';
import type { GridPolygon } from '#geometry/grow/grid-polygon.ts';
import { combinePolygons, gridPolygonOf, positivelyWound } from '#geometry/grow/grid-polygons.ts';
import { pushBorder } from '#geometry/grow/push-border.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, reverseSpans } from '#geometry/span.ts';
import { SAGITTA } from '#geometry/tolerances.ts';
import type { Cluster } from './find-clusters.ts';
import type { LevelField } from './largest-opening.ts';

export interface PieceZone {
  readonly polygons: readonly GridPolygon[];
  /** Holds all of them. */
  readonly box: Box;
  readonly carriers: readonly Carrier[];
}

/** Borders of all regions of exactly one level. */
export interface LevelBorder {
  readonly loops: readonly Loop[];
  readonly box: Box;
}

/** A cluster's borders by level, each followed once. */
export function levelBorders({ walk, levels }: LevelField, cluster: Cluster): (level: number) => LevelBorder {
  const known = new Map<number, LevelBorder>();
  return (level) => {
    const before = known.get(level);
    if (before !== undefined) return before;
    const chains = traceBorder(walk, cluster.halfEdges, (face) => levels[face] === level);
    const loops = chains.map((chain) => chain.map((halfEdge) => walk.spanOf(halfEdge)));
    const border = { loops, box: boxOfSpans(loops.flat()) };
    known.set(level, border);
    return border;
  };
}

export interface PieceZoneAsk {
  readonly level: number;
  /** Allowance that an opening of each deeper level keeps from this level's regions, mm. */
  readonly allowanceFrom: ReadonlyMap<number, number>;
  readonly origin: Point;
}

/** @param borderOf a cluster's borders by level */
export function pieceZone(
  borderOf: (level: number) => LevelBorder,
  { level, allowanceFrom, origin }: PieceZoneAsk,
): PieceZone {
  const { loops: own, box } = borderOf(level);
  const spans = own.flat();
  let polygons: readonly GridPolygon[] = own.map((loop) => gridPolygonOf(loop, origin));
  let widest = 0;
  if (own.length === 0) return { polygons, box, carriers: [] };
  for (const [deeper, width] of allowanceFrom) {
    const there = borderOf(deeper);
    if (!boxesMeet(growBox(box, width), there.box)) continue;
    widest = Math.max(widest, width);
    for (const loop of there.loops) for (const span of loop) spans.push(span);
    const margin = own.map((loop) => pushBorder(reverseSpans(loop).map((span) => ({ span, width }))));
    for (const { carriers } of margin) for (const span of carriers) spans.push(span);
    const grown = positivelyWound(
      margin.flatMap(({ chains }) => chains.map((chain) => gridPolygonOf(reverseSpans(chain), origin))),
    );
    const inside = combinePolygons(
      'intersect',
      grown,
      there.loops.map((loop) => gridPolygonOf(loop, origin)),
    );
    polygons = combinePolygons('unite', polygons, inside);
  }
  return {
    polygons,
    box: growBox(box, widest + SAGITTA),
    carriers: spans.map((span) => ({ span, isKnown: false })),
  };
}

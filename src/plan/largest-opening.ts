/**
 * The largest safe opening of a level (M3.1): the regions at least that deep, less every point that is nearer to a
 * shallower region than its allowance. One winding-number union a level: the border of the deep regions is pushed in,
 * span by span, by the allowance towards the region across it; lines between two shallower regions that are still near
 * enough to matter add strips of their own. Where only a window of it is asked for, the cost grows with the borders near that.
 */

import { type HalfEdges, traceBorder } from '#geometry/arrangement/half-edges.ts';
import { type Box, boxesMeet, boxOfSpan, boxOfSpans, growBox } from '#geometry/box.ts';
import type { GridPolygon } from '#geometry/grow/grid-polygon.ts';
import { combinePolygons, gridPolygonOf, positivelyWound } from '#geometry/grow/grid-polygons.ts';
import { type PushedBorder, pushAlone, pushBorder } from '#geometry/grow/push-border.ts';
import type { Carrier } from '#geometry/grow/rebuild-loops.ts';
import { cornerArcs } from '#geometry/loops/corner-arcs.ts';
import type { Point } from '#geometry/point.ts';
import type { Loop, Span } from '#geometry/span.ts';
import type { Cluster } from './find-clusters.ts';

export interface LevelField {
  readonly walk: HalfEdges;
  /** Level by face: 0 for land, -1 where there is no metal. */
  readonly levels: ArrayLike<number>;
  /** By face of a region that is cut out: how far openings keep back from its drawn line, whatever lies across, mm (M9.4). */
  readonly keepOfThrough?: ReadonlyMap<number, number>;
  /** Half-edges with metal on the right and none on the left: the sheet's edge seen from outside. */
  readonly sheetEdges: readonly number[];
}

/** A level of a group of regions, and where the grid's origin lies. */
export interface LevelInCluster {
  readonly field: LevelField;
  readonly cluster: Cluster;
  readonly level: number;
  readonly origin: Point;
}

/** Part of the plane, and which faces have to do with what is opened there. */
export interface Window {
  readonly box: Box;
  readonly isNear: (face: number) => boolean;
}

export interface LargestOpening {
  readonly polygons: readonly GridPolygon[];
  readonly carriers: readonly Carrier[];
  /** Levels of the shallower regions that keep it back. */
  readonly keptBackBy: ReadonlySet<number>;
  /** Borders of the deep regions that are the sheet's own edge: no maskant lies beyond. */
  readonly sheetEdge: readonly Span[];
}

/**
 * @param allowanceTo allowance of this level towards a region of the given level, mm
 * @param window where it is asked for; beyond it the opening is not kept back, or lacks whole faces
 */
export function largestOpening(
  { field, cluster, level, origin }: LevelInCluster,
  allowanceTo: (depth: number) => number,
  window?: Window,
): LargestOpening {
  const { walk } = field;
  const levelOf = (face: number) => field.levels[face] ?? -1;
  const isDeep = (face: number) => levelOf(face) >= level;
  const isOpened = (face: number) => isDeep(face) && (window === undefined || window.isNear(face));
  const keptBackBy = new Set<number>();
  const carriers: Carrier[] = [];
  const own: Loop[] = [];
  const strips: Loop[] = [];
  const take = (pushed: PushedBorder, chains: Loop[]) => {
    for (const chain of pushed.chains) chains.push(chain);
    for (const span of pushed.carriers) carriers.push({ span, isKnown: false });
  };

  const deepSpans: Span[] = [];
  const sheetEdge: Span[] = [];
  for (const chain of traceBorder(walk, cluster.halfEdges, isOpened)) {
    const border = chain.map((halfEdge) => {
      const span = walk.spanOf(halfEdge);
      const across = levelOf(walk.rightOf(halfEdge));
      deepSpans.push(span);
      // Between deep faces there is nothing to keep back from: the border stands there only because the window ends.
      if (across >= level) return { span, width: 0 };
      if (across < 0) {
        sheetEdge.push(span);
        return { span, width: 0 };
      }
      keptBackBy.add(across);
      const keep = field.keepOfThrough?.get(walk.leftOf(halfEdge));
      return { span, width: keep ?? allowanceTo(across) };
    });
    take(pushBorder(border), own);
  }

  const near = window?.box ?? boxOfSpans(deepSpans);
  for (const halfEdge of [...cluster.halfEdges, ...(sheetEdge.length > 0 ? field.sheetEdges : [])]) {
    const shallower = levelOf(walk.rightOf(halfEdge));
    const here = levelOf(walk.leftOf(halfEdge));
    if (isDeep(walk.leftOf(halfEdge)) || shallower < 0 || shallower >= level) continue;
    if (here >= 0 && shallower >= here) continue;
    const span = walk.spanOf(halfEdge);
    const width = allowanceTo(shallower);
    if (width === 0 || !boxesMeet(growBox(boxOfSpan(span), width), near)) continue;
    keptBackBy.add(shallower);
    take(pushAlone({ span, width }), strips);
  }
  const wound = (chains: readonly Loop[]) =>
    positivelyWound(cornerArcs(chains).map((chain) => gridPolygonOf(chain, origin)));
  const polygons = wound([...own, ...strips]);
  const cut = strips.length === 0 ? [] : throughBorders(field, cluster, isOpened);
  for (const span of cut.flat()) carriers.push({ span, isKnown: false });
  return {
    polygons:
      cut.length === 0 ? polygons : combinePolygons('unite', polygons, within(cut, wound(own), origin)),
    carriers: [...asKnown(sheetEdge), ...carriers],
    keptBackBy,
    sheetEdge,
  };
}

function within(cut: readonly Loop[], opened: readonly GridPolygon[], origin: Point): readonly GridPolygon[] {
  const polygons = cut.map((loop) => gridPolygonOf(loop, origin));
  return combinePolygons('intersect', opened, polygons);
}

/** Of what is cut out: it is opened regardless of what lies beside it (M9.4). */
function throughBorders(
  { walk, keepOfThrough }: LevelField,
  { halfEdges }: Cluster,
  isDeep: (face: number) => boolean,
): Loop[] {
  if (keepOfThrough === undefined || keepOfThrough.size === 0) return [];
  const chains = traceBorder(walk, halfEdges, (face) => isDeep(face) && keepOfThrough.has(face));
  return chains.map((chain) => chain.map((halfEdge) => walk.spanOf(halfEdge)));
}

/** Borders that exist already: they win over others that run along them. */
export function asKnown(spans: readonly Span[]): Carrier[] {
  return spans.map((span) => ({ span, isKnown: true }));
}

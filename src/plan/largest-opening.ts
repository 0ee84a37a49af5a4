/**
 * The largest safe opening of a level (M3.1): the regions at least that deep, less every point that is nearer to a
 * shallower region than its allowance. The border of the deep regions is pushed in, span by span, by the allowance towards
 * the region across it; lines between two shallower regions that are still near enough to matter add strips of their own.
 * Where the parallels meet nothing but each other they are the answer; else it takes one winding-number union a level. Where only a
 * window of it is asked for, the cost grows with the borders near that.
 */

import { type HalfEdges, traceBorder } from '#geometry/arrangement/half-edges.ts';
import { type Box, boxesMeet, boxOfSpan, boxOfSpans, growBox } from '#geometry/box.ts';
import type { Carrier } from '#geometry/grow/carrier-finder.ts';
import type { GridPolygon } from '#geometry/grow/grid-polygon.ts';
import { combinePolygons, gridPolygonOf, positivelyWound } from '#geometry/grow/grid-polygons.ts';
import { parallelLoops } from '#geometry/grow/parallel-loops.ts';
import { type PushedBorder, type PushedSpan, pushAlone, pushBorder } from '#geometry/grow/push-border.ts';
import { type RebuiltLoop, rebuildLoops } from '#geometry/grow/rebuild-loops.ts';
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
  /** Its loops where they follow from the parallels of its border alone; undefined where it takes the grid to tell. */
  readonly exact: () => readonly Loop[] | undefined;
  readonly onGrid: () => OnGrid;
  /** Levels of the shallower regions that keep it back. */
  readonly keptBackBy: ReadonlySet<number>;
  /** Borders of the deep regions that are the sheet's own edge: no maskant lies beyond. */
  readonly sheetEdge: readonly Span[];
}

/** An area on the grid, and what its loops can be rebuilt from. */
export interface OnGrid {
  readonly polygons: readonly GridPolygon[];
  readonly carriers: readonly Carrier[];
}

/** The borders that keep an opening back. */
interface Keepers {
  /** The deep regions' own, closed and with these on the left. */
  readonly border: readonly (readonly PushedSpan[])[];
  /** Lines between two shallower regions that are still near enough to matter. */
  readonly beside: readonly PushedSpan[];
  readonly keptBackBy: ReadonlySet<number>;
  readonly sheetEdge: readonly Span[];
}

/**
 * @param allowanceTo allowance of this level towards a region of the given level, mm
 * @param window where it is asked for; beyond it the opening is not kept back, or lacks whole faces
 */
export function largestOpening(
  ask: LevelInCluster,
  allowanceTo: (depth: number) => number,
  window?: Window,
): LargestOpening {
  const { field, cluster, level, origin } = ask;
  const isOpened = (face: number) =>
    (field.levels[face] ?? -1) >= level && (window === undefined || window.isNear(face));
  const keepers = keepersOf(ask, allowanceTo, isOpened, window);
  const { border, beside, keptBackBy, sheetEdge } = keepers;
  const cut = beside.length === 0 ? [] : throughBorders(field, cluster, isOpened);
  return {
    exact: () =>
      window === undefined && cut.length === 0 ? parallelLoops(border, beside, origin) : undefined,
    onGrid: () => onGrid(keepers, cut, origin),
    keptBackBy,
    sheetEdge,
  };
}

function keepersOf(
  { field, cluster, level }: LevelInCluster,
  allowanceTo: (depth: number) => number,
  isOpened: (face: number) => boolean,
  window: Window | undefined,
): Keepers {
  const { walk } = field;
  const levelOf = (face: number) => field.levels[face] ?? -1;
  const keptBackBy = new Set<number>();
  const sheetEdge: Span[] = [];
  const border = traceBorder(walk, cluster.halfEdges, isOpened).map((chain) =>
    chain.map((halfEdge): PushedSpan => {
      const span = walk.spanOf(halfEdge);
      const across = levelOf(walk.rightOf(halfEdge));
      // Between deep faces there is nothing to keep back from: the border stands there only because the window ends.
      if (across >= level) return { span, width: 0 };
      if (across < 0) {
        sheetEdge.push(span);
        return { span, width: 0 };
      }
      keptBackBy.add(across);
      const keep = field.keepOfThrough?.get(walk.leftOf(halfEdge));
      return { span, width: keep ?? allowanceTo(across) };
    }),
  );

  const beside: PushedSpan[] = [];
  const near = window?.box ?? boxOfSpans(border.flat().map(({ span }) => span));
  for (const halfEdge of [...cluster.halfEdges, ...(sheetEdge.length > 0 ? field.sheetEdges : [])]) {
    const shallower = levelOf(walk.rightOf(halfEdge));
    const here = levelOf(walk.leftOf(halfEdge));
    if (here >= level || shallower < 0 || shallower >= level) continue;
    if (here >= 0 && shallower >= here) continue;
    const span = walk.spanOf(halfEdge);
    const width = allowanceTo(shallower);
    if (width === 0 || !boxesMeet(growBox(boxOfSpan(span), width), near)) continue;
    keptBackBy.add(shallower);
    beside.push({ span, width });
  }
  return { border, beside, keptBackBy, sheetEdge };
}

function onGrid({ border, beside, sheetEdge }: Keepers, cut: readonly Loop[], origin: Point): OnGrid {
  const [own, strips] = [border.map(pushBorder), beside.map(pushAlone)];
  const wound = (pushed: readonly PushedBorder[]) =>
    positivelyWound(
      cornerArcs(pushed.flatMap(({ chains }) => chains)).map((chain) => gridPolygonOf(chain, origin)),
    );
  const polygons = wound([...own, ...strips]);
  const carriers = [...[...own, ...strips].flatMap((each) => each.carriers), ...cut.flat()];
  return {
    polygons:
      cut.length === 0 ? polygons : combinePolygons('unite', polygons, within(cut, wound(own), origin)),
    carriers: [...asKnown(sheetEdge), ...carriers.map((span) => ({ span, isKnown: false }))],
  };
}

/** The loops of an opening, from its borders alone where these tell, else from the grid. */
export function loopsOf(
  { exact, onGrid: made }: Pick<LargestOpening, 'exact' | 'onGrid'>,
  origin: Point,
): RebuiltLoop[] {
  const loops = exact();
  if (loops !== undefined) return loops.map((loop) => loop.map((span) => ({ span, isChord: false })));
  const { polygons, carriers } = made();
  return rebuildLoops(polygons, carriers, origin);
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

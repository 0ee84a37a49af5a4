/**
 * Openings, pieces and scribe lines of one cluster, deepest level first (M3.1, M3.2). Borders of a piece that an
 * earlier stage has already cut are not cut again, so a line may be open and end on an earlier one.
 */

import { type Box, boxesMeet, boxOfSpan, boxOfSpans, EMPTY_BOX, growBox, joinBoxes } from '#geometry/box.ts';
import { combinePolygons, gridOrigin, gridPolygonOf } from '#geometry/grow/grid-polygons.ts';
import { type RebuiltLoop, rebuildLoops, spansOf } from '#geometry/grow/rebuild-loops.ts';
import { type Loop, type Path, reverseSpans } from '#geometry/span.ts';
import { SAFELY_APART } from '#geometry/tolerances.ts';
import { allowance, type Undercut, wholeUndercut } from './allowance.ts';
import type { Cluster } from './find-clusters.ts';
import {
  asKnown,
  type LargestOpening,
  type LevelField,
  type LevelInCluster,
  largestOpening,
  loopsOf,
  type OnGrid,
} from './largest-opening.ts';
import { chordPlaces, closedFaces, type OpenedCluster } from './opened-cluster.ts';
import { type LevelBorder, levelBorders, pieceZone } from './piece-zone.ts';
import { scribeLines } from './scribe-lines.ts';

/** All that earlier levels have bared. */
interface Bared {
  readonly loops: readonly RebuiltLoop[];
  /** Whether that is the whole largest opening of the last level. */
  readonly isLargest: boolean;
  /** The last level, and the levels that kept its largest opening back. */
  readonly level: number;
  readonly keptBackBy: ReadonlySet<number>;
}

interface Step extends LevelInCluster {
  readonly undercut: Undercut;
  readonly levels: readonly number[];
  readonly bared: Bared;
  readonly borderOf: (level: number) => LevelBorder;
  readonly boxOf: (face: number) => Box;
}

/** Plans one cluster. Depends on nothing outside it but the sheet's edge. */
export function openCluster(field: LevelField, cluster: Cluster, undercut: Undercut): OpenedCluster {
  const levels = [...new Set(cluster.faces.map((face) => field.levels[face] ?? 0))].sort((a, b) => b - a);
  const origin = gridOrigin(cluster.halfEdges.map((halfEdge) => field.walk.spanOf(halfEdge)));
  const borderOf = levelBorders(field, cluster);
  const boxOf = faceBoxes(field, cluster);
  const hasThrough = cluster.faces.some((face) => field.keepOfThrough?.has(face));
  let bared: Bared = { loops: [], isLargest: true, level: Number.POSITIVE_INFINITY, keptBackBy: new Set() };
  const stages = levels.map((level) => {
    const step: Step = { field, cluster, undercut, levels, level, bared, borderOf, boxOf, origin };
    const allowanceTo = (depth: number) => allowance(undercut, { level, depth });
    // Lines of a contour that is cut out keep openings of all levels back alike: none lies clear inside the next.
    const isWhole = !hasThrough && hasNoZone(bared, level);
    const reach = isWhole ? largestOpening(step, allowanceTo) : withinZone(step, allowanceTo);
    const { loops, opening, piece, lines } =
      isWhole && isStrictlyInside(step, reach) ? aroundBared(step, reach) : part(step, reach);
    bared = { loops, isLargest: isWhole, level, keptBackBy: reach.keptBackBy };
    return { level, piece, opening, lines, chords: chordPlaces(loops) };
  });
  return {
    faces: cluster.faces,
    box: boxOfSpans(cluster.halfEdges.map((halfEdge) => field.walk.spanOf(halfEdge))),
    stages,
    closedFaces: closedFaces(field, cluster, stages),
  };
}

/**
 * Whether the zone of M3.2 keeps nothing back: all that earlier openings lack of the deeper regions is margin of this
 * level's own regions, since nothing else held those openings back.
 */
function hasNoZone(bared: Bared, level: number): boolean {
  return bared.isLargest && [...bared.keptBackBy].every((depth) => depth === level);
}

/**
 * Whether what is bare lies clear inside this level's opening: both keep their distance from the same regions, and
 * the deeper level keeps more.
 */
function isStrictlyInside({ undercut, level, bared }: Step, largest: LargestOpening): boolean {
  if (bared.loops.length === 0) return true;
  if (largest.sheetEdge.length > 0) return false;
  return [...largest.keptBackBy].every(
    (depth) =>
      allowance(undercut, { level: bared.level, depth }) >
      allowance(undercut, { level, depth }) + SAFELY_APART,
  );
}

/** What one step comes to; the loops are all that is bare then. */
interface Peeled {
  readonly loops: readonly RebuiltLoop[];
  readonly opening: readonly Loop[];
  /** Outer loops of an opening that is new all round are its own. */
  readonly piece: readonly Loop[];
  readonly lines: readonly Path[];
}

/** The piece is the opening with what is bare as its holes: nothing to clip. */
function aroundBared({ bared, origin }: Step, largest: LargestOpening): Peeled {
  const loops = loopsOf(largest, origin);
  const opening = loops.map(spansOf);
  const holes = bared.loops.map((loop) => reverseSpans(spansOf(loop)));
  return { loops, opening, piece: [...opening, ...holes], lines: scribeLines(loops, largest.sheetEdge) };
}

/** P(ℓ) = (O(ℓ) ∩ zone) − Ω(previous), Ω(ℓ) = Ω(previous) ∪ P(ℓ), on the grid; then both are rebuilt. */
function part({ bared, origin }: Step, { onGrid, sheetEdge }: LargestOpening): Peeled {
  const reach = onGrid();
  const earlier = bared.loops.map(spansOf);
  const carriers = [...asKnown(earlier.flat()), ...reach.carriers];
  const before = earlier.map((loop) => gridPolygonOf(loop, origin));
  const piece = rebuildLoops(combinePolygons('subtract', reach.polygons, before), carriers, origin);
  const loops = rebuildLoops(combinePolygons('unite', reach.polygons, before), carriers, origin);
  return {
    loops,
    opening: loops.map(spansOf),
    piece: piece.map(spansOf),
    lines: scribeLines(piece, [...earlier.flat(), ...sheetEdge]),
  };
}

/** O(ℓ) ∩ zone: of the largest opening only what lies about the zone is made. */
function withinZone(step: Step, allowanceTo: (depth: number) => number): LargestOpening {
  const { undercut, levels, level, borderOf, boxOf, origin } = step;
  const deeper = levels.filter((each) => each > level);
  const allowanceFrom = new Map(
    deeper.map((each) => [each, allowance(undercut, { level: each, depth: level })]),
  );
  const zone = pieceZone(borderOf, { level, allowanceFrom, origin });
  // No border keeps an opening farther back than the deepest level keeps from land.
  const felt = growBox(zone.box, wholeUndercut(undercut, levels[0] ?? level) + SAFELY_APART);
  const isNear = (face: number) => boxesMeet(boxOf(face), felt);
  const largest = largestOpening(step, allowanceTo, { box: zone.box, isNear });
  const onGrid = (): OnGrid => {
    const { polygons, carriers } = largest.onGrid();
    return {
      polygons: combinePolygons('intersect', polygons, zone.polygons),
      carriers: [...carriers, ...zone.carriers],
    };
  };
  return { ...largest, exact: () => undefined, onGrid };
}

/** Boxes of a cluster's faces. */
function faceBoxes({ walk }: LevelField, { halfEdges }: Cluster): (face: number) => Box {
  const boxes = new Map<number, Box>();
  for (const halfEdge of halfEdges) {
    const face = walk.leftOf(halfEdge);
    boxes.set(face, joinBoxes(boxes.get(face) ?? EMPTY_BOX, boxOfSpan(walk.spanOf(halfEdge))));
  }
  return (face) => boxes.get(face) ?? EMPTY_BOX;
}

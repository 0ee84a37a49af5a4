/** What a cluster of etched regions is opened to, whichever way the run is masked. */

import { traceBorder } from '#geometry/arrangement/half-edges.ts';
import type { Box } from '#geometry/box.ts';
import { combineLoops } from '#geometry/grow/grow-loops.ts';
import type { RebuiltLoop } from '#geometry/grow/rebuild-loops.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, type Loop, type Path, pointAlong } from '#geometry/span.ts';
import { SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import type { Cluster } from './find-clusters.ts';
import type { LevelField } from './largest-opening.ts';

/** What one level bares in one cluster. */
export interface ClusterStage {
  readonly level: number;
  readonly piece: readonly Loop[];
  readonly opening: readonly Loop[];
  readonly lines: readonly Path[];
  /** Where the opening's border is a chord of the grid, as no exact curve was found for it. */
  readonly chords: readonly Point[];
}

/** What a cluster came to. */
export interface OpenedCluster {
  readonly faces: readonly number[];
  /** Of their borders as drawn. */
  readonly box: Box;
  /** Deepest first; a level that has no opening here has no loops. */
  readonly stages: readonly ClusterStage[];
  /** Faces of which no point may be opened at their level. */
  readonly closedFaces: readonly number[];
}

/** The stage that makes a level's floor in a cluster, or the next deeper one where the cluster has no such floor. */
export function lastOpened(stages: readonly ClusterStage[], level: number): ClusterStage | undefined {
  return stages.findLast((each) => each.level >= level);
}

/** The places of a border that stayed chords. */
export function chordPlaces(loops: readonly RebuiltLoop[]): Point[] {
  return loops.flat().flatMap(({ span, isChord }) => (isChord ? [pointAlong(span, 0.5)] : []));
}

/** Faces of which no point may be opened at their level. */
export function closedFaces(
  field: LevelField,
  cluster: Cluster,
  stages: readonly ClusterStage[],
): readonly number[] {
  return cluster.faces.filter((face) => isClosed(field, cluster, face, stages));
}

/** Whether no point of the face is bare when its own level is etched. */
function isClosed(
  { walk, levels }: LevelField,
  cluster: Cluster,
  face: number,
  stages: readonly ClusterStage[],
): boolean {
  const opening = lastOpened(stages, levels[face] ?? 0)?.opening ?? [];
  const chains = traceBorder(walk, cluster.halfEdges, (each) => each === face);
  const border = chains.map((chain) => chain.map((halfEdge) => walk.spanOf(halfEdge)));
  // Most often an opening has a border point well in the face; only else is the clipping worth its time.
  const spans = border.flat();
  const isWellIn = (point: Point) =>
    isInsideLoops(border, point) && spans.every((span) => distanceToSpan(span, point) > SCRIBE_ACCURACY);
  if (opening.some(([first]) => first !== undefined && isWellIn(first.start))) return false;
  return opening.length === 0 || combineLoops('intersect', opening, border).length === 0;
}

/**
 * Windows of one cluster for a run that is masked anew for each stage (M3.5): for every level of the run down to the
 * cluster's deepest, all regions at least so deep, less what their shallower neighbours keep. Each window is cut as a whole.
 */
import { rebuildLoops, spansOf } from '#geometry/rebuild-loops.ts';
import { gridOrigin } from '#geometry/rings.ts';
import { allowance, type Undercut } from './allowance.ts';
import type { Cluster } from './find-clusters.ts';
import { type LevelField, largestOpening } from './largest-opening.ts';
import { type ClusterStage, closedFaces, type OpenedCluster } from './opened-cluster.ts';
import { scribeLines } from './scribe-lines.ts';

/** @param levels all levels of the run, rising */
export function openWindows(
  field: LevelField,
  cluster: Cluster,
  undercut: Undercut,
  levels: readonly number[],
): OpenedCluster {
  const deepest = cluster.faces.reduce((most, face) => Math.max(most, field.levels[face] ?? 0), 0);
  const origin = gridOrigin(cluster.halfEdges.map((halfEdge) => field.walk.spanOf(halfEdge)));
  const stages = levels
    .filter((level) => level <= deepest)
    .map((level): ClusterStage => {
      const allowanceTo = (depth: number) => allowance(undercut, { level, depth });
      const { rings, carriers } = largestOpening(field, cluster, level, allowanceTo, origin);
      const traced = rebuildLoops(rings, carriers, origin);
      const window = traced.map(spansOf);
      return { level, piece: window, opening: window, lines: scribeLines(traced, []) };
    })
    .reverse();
  return { faces: cluster.faces, stages, closedFaces: closedFaces(field, cluster, stages) };
}

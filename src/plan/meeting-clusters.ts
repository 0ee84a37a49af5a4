/** Clusters that can meet when their openings are grown, taken together: n log n of their boxes. */

import type { HalfEdges } from '#geometry/arrangement/half-edges.ts';
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { disjointSets } from '#geometry/disjoint-sets.ts';
import type { Cluster } from './find-clusters.ts';

/** @param reach mm, that an opening may pass its cluster's border by */
export function meetingClusters(walk: HalfEdges, clusters: readonly Cluster[], reach: number): Cluster[] {
  const boxes = clusters.map(({ halfEdges }) =>
    growBox(boxOfSpans(halfEdges.map((halfEdge) => walk.spanOf(halfEdge))), reach),
  );
  const sets = disjointSets(clusters.length);
  const index = indexBoxes(boxes);
  boxes.forEach((box, cluster) => {
    for (const other of index.meeting(box)) sets.unite(cluster, other);
  });
  const groups = new Map<number, { faces: number[]; halfEdges: number[] }>();
  clusters.forEach((_, at) => {
    const root = sets.find(at);
    const group = groups.get(root) ?? { faces: [], halfEdges: [] };
    groups.set(root, group);
    const { faces, halfEdges } = itemAt(clusters, at);
    for (const face of faces) group.faces.push(face);
    for (const halfEdge of halfEdges) group.halfEdges.push(halfEdge);
  });
  const rising = (numbers: number[]) => numbers.sort((a, b) => a - b);
  return [...groups.values()].map(({ faces, halfEdges }) => ({
    faces: rising(faces),
    halfEdges: rising(halfEdges),
  }));
}

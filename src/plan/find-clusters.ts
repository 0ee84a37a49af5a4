/**
 * Clusters: groups of etched faces that touch, at a line or at a point. Faces of different clusters have land between
 * them, and land keeps an opening farther away than anything behind it would, so each cluster is planned alone.
 * Near-linear in the number of edges.
 */

import type { HalfEdges } from '#geometry/arrangement/half-edges.ts';
import { itemAt } from '#geometry/assert.ts';
import { disjointSets } from '#geometry/disjoint-sets.ts';

export interface Cluster {
  /** Etched faces, ascending. */
  readonly faces: readonly number[];
  /** Half-edges with one of these faces on the left, ascending. */
  readonly halfEdges: readonly number[];
}

/** @param levels level by face; more than 0 is etched */
export function findClusters(walk: HalfEdges, levels: ArrayLike<number>): Cluster[] {
  const sets = disjointSets(levels.length);
  const faceAtVertex = new Map<number, number>();
  const etched = [];
  for (let halfEdge = 0; halfEdge < walk.count; halfEdge++) {
    const face = walk.leftOf(halfEdge);
    if (itemAt(levels, face) <= 0) continue;
    etched.push(halfEdge);
    const vertex = walk.startOf(halfEdge);
    const other = faceAtVertex.get(vertex);
    if (other === undefined) faceAtVertex.set(vertex, face);
    else sets.unite(face, other);
  }
  const clusters = new Map<number, { faces: Set<number>; halfEdges: number[] }>();
  for (const halfEdge of etched) {
    const face = walk.leftOf(halfEdge);
    const root = sets.find(face);
    const cluster = clusters.get(root) ?? { faces: new Set(), halfEdges: [] };
    clusters.set(root, cluster);
    cluster.faces.add(face);
    cluster.halfEdges.push(halfEdge);
  }
  return [...clusters.values()].map(({ faces, halfEdges }) => ({
    faces: [...faces].sort((a, b) => a - b),
    halfEdges,
  }));
}

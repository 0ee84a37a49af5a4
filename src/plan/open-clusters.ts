/**
 * All clusters of a part opened. What each came to is kept in a memory that the caller owns, so that a change of one
 * depth opens one cluster again; the rest costs a comparison a face.
 */
import type { Arrangement } from '#geometry/arrangement/arrangement.ts';
import { type HalfEdges, halfEdgesOf } from '#geometry/arrangement/half-edges.ts';
import { itemAt } from '#geometry/assert.ts';
import { type Undercut, wholeUndercut } from './allowance.ts';
import { type Cluster, findClusters } from './find-clusters.ts';
import type { LevelField } from './largest-opening.ts';
import { meetingClusters } from './meeting-clusters.ts';
import { openCluster } from './open-cluster.ts';
import { openWindows } from './open-windows.ts';
import type { OpenedCluster } from './opened-cluster.ts';
import type { SplitMemory } from './taper-strips.ts';

/** What is worth keeping from one plan to the next of the same arrangement. */
export interface ClusterMemory extends SplitMemory {
  linework: Linework | undefined;
  /** Clusters as long as the same faces are etched, to whatever depth. */
  grouping: Grouping | undefined;
  /** By all that a cluster depends on besides the process, of the process that they were opened for. */
  opened: Map<string, OpenedCluster>;
  process?: string;
  /** The same of the far face. */
  far?: ClusterMemory;
}

interface Linework {
  readonly arrangement: Arrangement;
  readonly walk: HalfEdges;
}

interface Grouping {
  /** By face: -1 no metal, 0 land, 1 etched. */
  readonly kinds: Int8Array;
  readonly clusters: readonly Cluster[];
  readonly sheetEdges: readonly number[];
}

export function createClusterMemory(): ClusterMemory {
  return { linework: undefined, grouping: undefined, opened: new Map() };
}

/** A face of the sheet with what its openings follow from. Plain data. */
export interface FaceToOpen {
  readonly arrangement: Arrangement;
  /** By face of the arrangement: 0 for land, -1 where there is no metal. */
  readonly levels: Float64Array;
  readonly undercut: Undercut;
  readonly keepOfThrough?: ReadonlyMap<number, number>;
}

export function openClusters(face: FaceToOpen, memory: ClusterMemory): OpenedCluster[] {
  const { clusters, keyOf, open } = clustersOf(face, memory);
  const kept = new Map<string, OpenedCluster>();
  const opened = clusters.map((cluster) => {
    const key = keyOf(cluster);
    const known = memory.opened.get(key) ?? open(cluster);
    kept.set(key, known);
    return known;
  });
  memory.opened = kept;
  return opened;
}

/** Which clusters the memory does not have yet, by their place in the order of all. */
export function unopenedClusters(face: FaceToOpen, memory: ClusterMemory): number[] {
  const { clusters, keyOf } = clustersOf(face, memory);
  return clusters.flatMap((cluster, place) => (memory.opened.has(keyOf(cluster)) ? [] : [place]));
}

/** Of some clusters, by their place, what each comes to: the same wherever it is done. */
export function openAt(face: FaceToOpen, places: readonly number[]): OpenedCluster[] {
  const { clusters, open } = clustersOf(face, createClusterMemory());
  return places.map((place) => open(itemAt(clusters, place)));
}

/** Puts into the memory what was opened elsewhere. */
export function keepOpened(
  face: FaceToOpen,
  memory: ClusterMemory,
  opened: ReadonlyMap<number, OpenedCluster>,
): void {
  const { clusters, keyOf } = clustersOf(face, memory);
  for (const [place, each] of opened) memory.opened.set(keyOf(itemAt(clusters, place)), each);
}

function clustersOf(face: FaceToOpen, memory: ClusterMemory) {
  const { arrangement, levels, undercut, keepOfThrough = new Map<number, number>() } = face;
  const walk = walkOf(memory, arrangement);
  const { clusters, sheetEdges } = groupingOf(memory, walk, levels);
  const field: LevelField = { walk, levels, sheetEdges, keepOfThrough };
  const process = JSON.stringify(undercut);
  if (memory.process !== process) memory.opened = new Map();
  memory.process = process;
  const { coatLevels } = undercut;
  const keptOf = (each: number) => (keepOfThrough.has(each) ? `-${keepOfThrough.get(each)}` : '');
  // With a new coat for each stage a wall that passes its line needs windows that do, too.
  const isAlone =
    coatLevels === undefined || (undercut.edgeDatum === 'shallow-edge' && keepOfThrough.size === 0);
  return {
    clusters: isAlone
      ? clusters
      : meetingClusters(walk, clusters, wholeUndercut(undercut, coatLevels.at(-1) ?? 0)),
    keyOf: ({ faces }: Cluster): string =>
      faces.map((each) => `${each}:${levels[each]}${keptOf(each)}`).join(' '),
    open: (cluster: Cluster): OpenedCluster =>
      coatLevels === undefined
        ? openCluster(field, cluster, undercut)
        : openWindows(field, cluster, undercut, coatLevels),
  };
}

function walkOf(memory: ClusterMemory, arrangement: Arrangement): HalfEdges {
  if (memory.linework?.arrangement === arrangement) return memory.linework.walk;
  const walk = halfEdgesOf(arrangement);
  memory.linework = { arrangement, walk };
  memory.grouping = undefined;
  memory.opened = new Map();
  return walk;
}

function groupingOf(memory: ClusterMemory, walk: HalfEdges, levels: Float64Array): Grouping {
  const kinds = Int8Array.from(levels, Math.sign);
  const known = memory.grouping;
  if (known?.kinds.every((kind, face) => kind === kinds[face])) return known;
  const isMetal = (face: number) => (kinds[face] ?? -1) >= 0;
  const sheetEdges: number[] = [];
  for (let halfEdge = 0; halfEdge < walk.count; halfEdge++) {
    if (!isMetal(walk.leftOf(halfEdge)) && isMetal(walk.rightOf(halfEdge))) sheetEdges.push(halfEdge);
  }
  const grouping = { kinds, clusters: findClusters(walk, levels), sheetEdges };
  memory.grouping = grouping;
  return grouping;
}

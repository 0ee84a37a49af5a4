/**
 * All clusters of a part opened, those that are alike once. What each came to is kept in a memory that the caller owns, so that a change of one
 * depth opens one cluster again; the rest costs a comparison a face.
 */
import type { Arrangement } from '#geometry/arrangement/arrangement.ts';
import { type HalfEdges, halfEdgesOf } from '#geometry/arrangement/half-edges.ts';
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans } from '#geometry/box.ts';
import { gridOrigin } from '#geometry/grow/grid-polygons.ts';
import { alikeClusters, type ClusterShape, clusterShapes, placedCluster } from './alike-clusters.ts';
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
  /** By cluster, made when they are first asked for. */
  shapes?: readonly (ClusterShape | undefined)[];
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
  const { clusters, alike, keyOf, open, placeOf } = clustersOf(face, memory);
  const kept = new Map<string, OpenedCluster>();
  const opened: OpenedCluster[] = [];
  clusters.forEach((cluster, place) => {
    const like = alike[place];
    const key = keyOf(place);
    const known =
      memory.opened.get(key) ??
      (like === undefined
        ? open(cluster)
        : placedCluster(itemAt(opened, like.first), like, placeOf(cluster)));
    kept.set(key, known);
    opened.push(known);
  });
  memory.opened = kept;
  return opened;
}

/** Which clusters the memory does not have yet, by their place in the order of all; none of those that are another one moved. */
export function unopenedClusters(face: FaceToOpen, memory: ClusterMemory): number[] {
  const { clusters, alike, keyOf } = clustersOf(face, memory);
  return clusters.flatMap((_, place) =>
    alike[place] !== undefined || memory.opened.has(keyOf(place)) ? [] : [place],
  );
}

/** Of some clusters, by their place, what each comes to: the same wherever it is done. */
export function openAt(face: FaceToOpen, places: readonly number[]): OpenedCluster[] {
  const { clusters, open } = clustersToOpen(face, createClusterMemory());
  return places.map((place) => open(itemAt(clusters, place)));
}

/** Puts into the memory what was opened elsewhere. */
export function keepOpened(
  face: FaceToOpen,
  memory: ClusterMemory,
  opened: ReadonlyMap<number, OpenedCluster>,
): void {
  const { keyOf } = clustersOf(face, memory);
  for (const [place, each] of opened) memory.opened.set(keyOf(place), each);
}

function clustersOf(face: FaceToOpen, memory: ClusterMemory) {
  const { levels, keepOfThrough, undercut } = face;
  const { clusters, walk, open } = clustersToOpen(face, memory);
  const keptOf = (each: number) => (keepOfThrough?.has(each) ? `-${keepOfThrough.get(each)}` : '');
  const askedOf = (each: number) => `${levels[each]}${keptOf(each)}`;
  // A window of a coat of its own may feel the sheet's edge from afar.
  const alike =
    undercut.coatLevels === undefined ? alikeClusters(shapesOf(memory, walk, levels), askedOf) : [];
  return {
    clusters,
    alike,
    open,
    /** Everything that a cluster's openings depend on: of one that is another moved also which that is. */
    keyOf: (place: number): string => {
      const { faces } = itemAt(clusters, place);
      const own = faces.map((each) => `${each}:${askedOf(each)}`).join(' ');
      const first = alike[place]?.first;
      return first === undefined ? own : `${own} as ${itemAt(clusters, first).faces[0]}`;
    },
    placeOf: ({ faces, halfEdges }: Cluster) => {
      const spans = halfEdges.map((halfEdge) => walk.spanOf(halfEdge));
      return { faces, box: boxOfSpans(spans), origin: gridOrigin(spans) };
    },
  };
}

function clustersToOpen(face: FaceToOpen, memory: ClusterMemory) {
  const { arrangement, levels, undercut, keepOfThrough = new Map<number, number>() } = face;
  const walk = walkOf(memory, arrangement);
  const { clusters, sheetEdges } = groupingOf(memory, walk, levels);
  const field: LevelField = { walk, levels, sheetEdges, keepOfThrough };
  const process = JSON.stringify(undercut);
  if (memory.process !== process) memory.opened = new Map();
  memory.process = process;
  const { coatLevels } = undercut;
  // With a new coat for each stage a wall that passes its line needs windows that do, too.
  const isAlone =
    coatLevels === undefined || (undercut.edgeDatum === 'shallow-edge' && keepOfThrough.size === 0);
  return {
    walk,
    clusters: isAlone
      ? clusters
      : meetingClusters(walk, clusters, wholeUndercut(undercut, coatLevels.at(-1) ?? 0)),
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
  const grouping: Grouping = { kinds, clusters: findClusters(walk, levels), sheetEdges };
  memory.grouping = grouping;
  return grouping;
}

function shapesOf(
  memory: ClusterMemory,
  walk: HalfEdges,
  levels: Float64Array,
): readonly (ClusterShape | undefined)[] {
  const grouping = groupingOf(memory, walk, levels);
  grouping.shapes ??= clusterShapes(walk, grouping.clusters, (face) => (levels[face] ?? -1) >= 0);
  return grouping.shapes;
}

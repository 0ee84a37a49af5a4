/**
 * The layer that each face belongs to: that of the smallest closed outline that holds it. An outline of a layer need not be
 * one curve: what counts is how far one can go from the face without crossing a line of that layer. For one layer after the
 * other, faces on either side of every line of the others are united; layers are halved, so that each line is united once at
 * each halving and taken apart again. Cost: edges × log layers × log faces, and the faces within each outline.
 */

import { type Arrangement, OUTSIDE } from '#geometry/arrangement/arrangement.ts';
import { itemAt } from '#geometry/assert.ts';
import { spanLength } from '#geometry/span.ts';
import { SAME_SHARE } from '#geometry/tolerances.ts';
import { type FaceSets, faceSets } from './face-sets.ts';

/** For each face its layers, alphabetical: more than one where outlines of several layers enclose the very same area. */
export function findLayers(arrangement: Arrangement, layerOfSource: (source: number) => string): string[][] {
  const { edges, faces } = arrangement;
  const layersOfEdge = edges.map(({ sources }) => new Set(sources.map(layerOfSource)));
  const names = [...new Set(layersOfEdge.flatMap((layers) => [...layers]))].sort();
  const rankOf = new Map(names.map((name, rank) => [name, rank]));
  const walls = edges.map(({ left, right }, edge) => ({
    left,
    right,
    ranks: [...itemAt(layersOfEdge, edge)].map((name) => rankOf.get(name) ?? 0),
  }));
  const best = faces.map(() => ({ area: Number.POSITIVE_INFINITY, layers: [] as string[] }));
  const sets = faceSets(faces.map(({ area }) => area));
  eachLayer({ walls, from: 0, to: names.length }, sets, (rank, own) => {
    const name = itemAt(names, rank);
    for (const cell of cellsBeside(own, sets)) {
      const area = sets.areaOf(cell);
      for (const face of sets.membersOf(cell)) {
        const held = itemAt(best, face);
        if (Math.abs(area - held.area) <= SAME_SHARE * area) held.layers.push(name);
        else if (area < held.area) best[face] = { area, layers: [name] };
      }
    }
  });
  return best.map(({ layers }, face) => {
    if (layers.length > 0 || face === OUTSIDE) return layers;
    return [longestBorderLayer(arrangement, face, layersOfEdge)];
  });
}

/** An edge as what keeps its two faces apart, with the numbers of its layers in their order. */
interface Wall {
  readonly left: number;
  readonly right: number;
  readonly ranks: readonly number[];
}

interface LayerRange {
  /** Those that a layer of the range has; all others are united. */
  readonly walls: readonly Wall[];
  readonly from: number;
  readonly to: number;
}

/** Visits the layers in order, each with its own walls, while all walls of the others are united. */
function eachLayer(
  { walls, from, to }: LayerRange,
  sets: FaceSets,
  visit: (rank: number, own: readonly Wall[]) => void,
): void {
  if (to - from === 1) visit(from, walls);
  if (to - from < 2) return;
  const middle = (from + to) >> 1;
  for (const [first, end] of [
    [from, middle],
    [middle, to],
  ] as const) {
    const mark = sets.mark();
    const kept: Wall[] = [];
    for (const wall of walls) {
      if (wall.ranks.some((rank) => rank >= first && rank < end)) kept.push(wall);
      else sets.unite(wall.left, wall.right);
    }
    eachLayer({ walls: kept, from: first, to: end }, sets, visit);
    sets.undoTo(mark);
  }
}

/** The sets that a layer's walls keep apart from the outside. */
function cellsBeside(walls: readonly Wall[], sets: FaceSets): Set<number> {
  const endless = sets.find(OUTSIDE);
  const cells = new Set(walls.flatMap(({ left, right }) => [sets.find(left), sets.find(right)]));
  cells.delete(endless);
  return cells;
}

/** For a face that only several layers together enclose: the one with most of its border, the first by name among equals. */
function longestBorderLayer(
  { edges, faces }: Arrangement,
  face: number,
  layersOfEdge: readonly ReadonlySet<string>[],
): string {
  const lengths = new Map<string, number>();
  for (const { edge } of itemAt(faces, face).borders.flat()) {
    for (const layer of itemAt(layersOfEdge, edge)) {
      lengths.set(layer, (lengths.get(layer) ?? 0) + spanLength(itemAt(edges, edge).span));
    }
  }
  let best = { layer: '', length: 0 };
  for (const layer of [...lengths.keys()].sort()) {
    const length = lengths.get(layer) ?? 0;
    if (length > best.length * (1 + SAME_SHARE)) best = { layer, length };
  }
  return best.layer;
}

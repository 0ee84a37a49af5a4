/**
 * The layer that each face belongs to: that of the smallest closed outline that holds it. An outline of a layer need not be
 * one curve: what counts is how far one can go from the face without crossing a line of that layer. Cost: layers × edges.
 */
import { type Arrangement, OUTSIDE } from '#geometry/arrangement.ts';
import { itemAt } from '#geometry/assert.ts';
import { disjointSets } from '#geometry/disjoint-sets.ts';
import { spanLength } from '#geometry/span.ts';

/** Areas that differ by less than this share are the same area summed in another order. */
const SAME_AREA = 1e-9;

/** For each face its layers, alphabetical: more than one where outlines of several layers enclose the very same area. */
export function findLayers(arrangement: Arrangement, layerOfSource: (source: number) => string): string[][] {
  const { edges, faces } = arrangement;
  const layersOfEdge = edges.map(({ sources }) => new Set(sources.map(layerOfSource)));
  const names = [...new Set(layersOfEdge.flatMap((layers) => [...layers]))].sort();
  const best = faces.map(() => ({ area: Number.POSITIVE_INFINITY, layers: [] as string[] }));
  for (const name of names) {
    const reach = reachWithout(arrangement, (edge) => itemAt(layersOfEdge, edge).has(name));
    faces.forEach((_, face) => {
      const area = reach(face);
      if (area === undefined) return;
      const held = itemAt(best, face);
      if (Math.abs(area - held.area) <= SAME_AREA * area) held.layers.push(name);
      else if (area < held.area) best[face] = { area, layers: [name] };
    });
  }
  return best.map(({ layers }, face) => {
    if (layers.length > 0 || face === OUTSIDE) return layers;
    return [longestBorderLayer(arrangement, face, layersOfEdge)];
  });
}

/** Area of all that can be reached from a face without crossing certain edges; undefined where that has no end. */
function reachWithout(
  { edges, faces }: Arrangement,
  isWall: (edge: number) => boolean,
): (face: number) => number | undefined {
  const cells = disjointSets(faces.length);
  edges.forEach(({ left, right }, edge) => {
    if (!isWall(edge)) cells.unite(left, right);
  });
  const areas = new Map<number, number>();
  faces.forEach(({ area }, face) => {
    const cell = cells.find(face);
    areas.set(cell, (areas.get(cell) ?? 0) + area);
  });
  const endless = cells.find(OUTSIDE);
  return (face) => {
    const cell = cells.find(face);
    return cell === endless ? undefined : areas.get(cell);
  };
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
    if (length > best.length * (1 + SAME_AREA)) best = { layer, length };
  }
  return best.layer;
}

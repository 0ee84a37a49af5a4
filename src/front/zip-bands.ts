/**
 * The bands of one cluster's walls that are plain strips: between two contours that follow each other ring by ring. All others
 * are left to the ground. A strip covers the ground between its two rings once, and nothing beyond it.
 */
import { itemAt } from '#geometry/assert.ts';
import { type Outline, type Ring, reverseRing } from './contour-outline.ts';
import type { Feature } from './front-features.ts';
import { doubleArea, type MeshDraft } from './mesh-draft.ts';
import { type ZipRules, zipRings } from './zip-rings.ts';

/** Adds the strips' triangles. Gives how many strips each ring borders: where there are two it lies amid the walls. */
export function zipBands(draft: MeshDraft, outlines: readonly Outline[], rules: ZipRules): Map<Ring, number> {
  const strips = new Map<Ring, number>();
  for (let i = 1; i < outlines.length; i++) {
    const above = itemAt(outlines, i - 1);
    const below = itemAt(outlines, i);
    if (!above.isWhole || !below.isWhole) continue;
    const pairs = pairRings(above.withoutFloor, below.withFloor);
    const before = draft.triangleCount;
    const isPlain = pairs?.every(([upper, lower]) => zipPair(draft, upper, lower, rules)) ?? false;
    if (!isPlain || pairs === undefined) {
      draft.triangleCount = before;
      continue;
    }
    for (const ring of pairs.flat()) strips.set(ring, (strips.get(ring) ?? 0) + 1);
  }
  return strips;
}

/** Each ring above with the one below that spreads from the same borders; undefined unless each has one of its own. */
function pairRings(above: readonly Ring[], below: readonly Ring[]): [Ring, Ring][] | undefined {
  if (above.length !== below.length) return undefined;
  const only = above[0];
  if (only !== undefined && above.length === 1) return [[only, itemAt(below, 0)]];
  const ringOf = new Map<Feature, Ring>();
  for (const ring of above) for (const feature of ring.features) ringOf.set(feature, ring);
  const free = new Set(above);
  const pairs: [Ring, Ring][] = [];
  for (const ring of below) {
    const known = ring.features.find((feature) => ringOf.has(feature));
    const partner = known === undefined ? undefined : ringOf.get(known);
    if (partner === undefined || !free.delete(partner)) return undefined;
    pairs.push([partner, ring]);
  }
  return pairs;
}

/** A pocket's ring lies about the one below it; that of an island inside it. */
function zipPair(draft: MeshDraft, upper: Ring, lower: Ring, rules: ZipRules): boolean {
  const isPocket = ringArea(draft, upper) > 0;
  if (isPocket !== ringArea(draft, lower) > 0) return false;
  return isPocket
    ? zipRings(draft, upper, lower, rules)
    : zipRings(draft, reverseRing(lower), reverseRing(upper), rules);
}

function ringArea(draft: MeshDraft, { vertices }: Ring): number {
  const origin = itemAt(vertices, 0);
  let double = 0;
  for (let i = 1; i + 1 < vertices.length; i++) {
    double += doubleArea(draft, origin, itemAt(vertices, i), itemAt(vertices, i + 1));
  }
  return double / 2;
}

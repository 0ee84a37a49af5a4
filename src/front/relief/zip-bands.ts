/**
 * The bands of one cluster's walls that are plain strips: between two contours that follow each other loop by loop. All others
 * are left to the ground. A strip covers the ground between its two loops once, and nothing beyond it.
 */

import type { Feature } from '#front/front-features.ts';
import { itemAt } from '#geometry/assert.ts';
import { type Outline, reverseLoop, type VertexLoop } from './contour-outline.ts';
import { doubleArea, type MeshDraft } from './mesh-draft.ts';
import { type ZipRules, zipLoops } from './zip-loops.ts';

/** Adds the strips' triangles. Gives how many strips each loop borders: where there are two it lies between walls. */
export function zipBands(
  draft: MeshDraft,
  outlines: readonly Outline[],
  rules: ZipRules,
): Map<VertexLoop, number> {
  const strips = new Map<VertexLoop, number>();
  for (let i = 1; i < outlines.length; i++) {
    const above = itemAt(outlines, i - 1);
    const below = itemAt(outlines, i);
    if (!above.isWhole || !below.isWhole) continue;
    const pairs = pairLoops(above.withoutFloor, below.withFloor);
    const before = draft.triangleCount;
    const isPlain = pairs?.every(([upper, lower]) => zipPair(draft, upper, lower, rules)) ?? false;
    if (!isPlain || pairs === undefined) {
      draft.triangleCount = before;
      continue;
    }
    for (const loop of pairs.flat()) strips.set(loop, (strips.get(loop) ?? 0) + 1);
  }
  return strips;
}

/** Each loop above with the one below that is offset from the same borders; undefined unless each has one of its own. */
function pairLoops(
  above: readonly VertexLoop[],
  below: readonly VertexLoop[],
): [VertexLoop, VertexLoop][] | undefined {
  if (above.length !== below.length) return undefined;
  const only = above[0];
  if (only !== undefined && above.length === 1) return [[only, itemAt(below, 0)]];
  const loopOf = new Map<Feature, VertexLoop>();
  for (const loop of above) for (const feature of loop.features) loopOf.set(feature, loop);
  const free = new Set(above);
  const pairs: [VertexLoop, VertexLoop][] = [];
  for (const loop of below) {
    const known = loop.features.find((feature) => loopOf.has(feature));
    const partner = known === undefined ? undefined : loopOf.get(known);
    if (partner === undefined || !free.delete(partner)) return undefined;
    pairs.push([partner, loop]);
  }
  return pairs;
}

/** A pocket's loop lies about the one below it; that of an island inside it. */
function zipPair(draft: MeshDraft, upper: VertexLoop, lower: VertexLoop, rules: ZipRules): boolean {
  const isPocket = loopAreaOf(draft, upper) > 0;
  if (isPocket !== loopAreaOf(draft, lower) > 0) return false;
  return isPocket
    ? zipLoops(draft, upper, lower, rules)
    : zipLoops(draft, reverseLoop(lower), reverseLoop(upper), rules);
}

function loopAreaOf(draft: MeshDraft, { vertices }: VertexLoop): number {
  const origin = itemAt(vertices, 0);
  let double = 0;
  for (let i = 1; i + 1 < vertices.length; i++) {
    double += doubleArea(draft, origin, itemAt(vertices, i), itemAt(vertices, i + 1));
  }
  return double / 2;
}

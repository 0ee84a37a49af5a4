/**
 * Walking an arrangement: every edge is two half-edges, each with its own face on the left. Half-edge 2e runs along
 * edge e's span, 2e + 1 against it. All look-ups take constant time.
 */

import { itemAt } from '#geometry/assert.ts';
import { reverseSpan, type Span } from '#geometry/span.ts';
import type { Arrangement } from './arrangement.ts';

export interface HalfEdges {
  readonly count: number;
  readonly leftOf: (halfEdge: number) => number;
  readonly rightOf: (halfEdge: number) => number;
  /** Vertex that the half-edge starts from. */
  readonly startOf: (halfEdge: number) => number;
  /** The half-edge that follows round the face on the left. */
  readonly nextOf: (halfEdge: number) => number;
  /** The span in the half-edge's own direction. */
  readonly spanOf: (halfEdge: number) => Span;
}

export function halfEdgesOf({ edges, faces }: Arrangement): HalfEdges {
  const next = new Int32Array(edges.length * 2).fill(-1);
  for (const { borders } of faces) {
    for (const border of borders) {
      border.forEach(({ edge, forward }, index) => {
        const follower = itemAt(border, (index + 1) % border.length);
        next[2 * edge + (forward ? 0 : 1)] = 2 * follower.edge + (follower.forward ? 0 : 1);
      });
    }
  }
  const edgeOf = (halfEdge: number) => itemAt(edges, halfEdge >> 1);
  const runsForward = (halfEdge: number) => (halfEdge & 1) === 0;
  return {
    count: edges.length * 2,
    leftOf: (halfEdge) => (runsForward(halfEdge) ? edgeOf(halfEdge).left : edgeOf(halfEdge).right),
    rightOf: (halfEdge) => (runsForward(halfEdge) ? edgeOf(halfEdge).right : edgeOf(halfEdge).left),
    startOf: (halfEdge) => (runsForward(halfEdge) ? edgeOf(halfEdge).start : edgeOf(halfEdge).end),
    nextOf: (halfEdge) => itemAt(next, halfEdge),
    spanOf: (halfEdge) =>
      runsForward(halfEdge) ? edgeOf(halfEdge).span : reverseSpan(edgeOf(halfEdge).span),
  };
}

/**
 * The border of a set of faces as closed chains of half-edges, the set on the left.
 * @param candidates half-edges among which every border half-edge of the set is found
 */
export function traceBorder(
  walk: HalfEdges,
  candidates: readonly number[],
  isInSet: (face: number) => boolean,
): number[][] {
  const isBorder = (halfEdge: number) => isInSet(walk.leftOf(halfEdge)) && !isInSet(walk.rightOf(halfEdge));
  const seen = new Set<number>();
  const chains: number[][] = [];
  for (const first of candidates) {
    if (seen.has(first) || !isBorder(first)) continue;
    const chain: number[] = [];
    let current = first;
    do {
      chain.push(current);
      seen.add(current);
      // Turn round the end vertex, through the set, until its next border leaves.
      current = walk.nextOf(current);
      while (!isBorder(current)) current = walk.nextOf(current ^ 1);
    } while (current !== first);
    chains.push(chain);
  }
  return chains;
}

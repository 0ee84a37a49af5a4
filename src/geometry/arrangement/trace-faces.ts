/**
 * The faces of a plane graph whose edges meet at vertices only. At every vertex the next edge of a face is the one that
 * turns most sharply to the left; edges that leave in one direction are distinguished by their curvature.
 */
import { itemAt } from '#geometry/assert.ts';
import { disjointSets } from '#geometry/disjoint-sets.ts';
import { type Loop, loopArea, reverseSpan, type Span } from '#geometry/span.ts';
import { orderAround } from './order-around.ts';

/** An edge to trace: its ends are vertex numbers. */
export interface TraceableEdge {
  readonly span: Span;
  readonly start: number;
  readonly end: number;
}

/** A border walked once with the face on the left: half-edges 2e (along edge e) and 2e + 1 (against it). */
export interface TracedCycle {
  readonly halves: readonly number[];
  /** Number of the connected part of the graph: its smallest vertex. */
  readonly part: number;
  /** True for the one cycle of each part that sees the part from outside. */
  readonly isOutside: boolean;
}

export function traceFaces(edges: readonly TraceableEdge[], vertexCount: number): TracedCycle[] {
  const nextHalf = linkHalves(edges, vertexCount);
  const parts = disjointSets(vertexCount);
  for (const { start, end } of edges) parts.unite(start, end);
  const isWalked = new Uint8Array(nextHalf.length);
  const cycles: { halves: number[]; part: number; area: number }[] = [];
  for (let first = 0; first < nextHalf.length; first++) {
    if (isWalked[first] === 1) continue;
    const halves: number[] = [];
    for (let half = first; isWalked[half] === 0; half = itemAt(nextHalf, half)) {
      isWalked[half] = 1;
      halves.push(half);
    }
    const part = parts.find(originOf(edges, first));
    cycles.push({ halves, part, area: loopArea(loopOfHalves(edges, halves)) });
  }
  // The areas of a part's cycles sum to zero, and only the one seen from outside is negative.
  const outside = new Map<number, { area: number }>();
  for (const cycle of cycles) {
    if (cycle.area < (outside.get(cycle.part)?.area ?? Number.POSITIVE_INFINITY))
      outside.set(cycle.part, cycle);
  }
  return cycles.map((cycle) => ({
    halves: cycle.halves,
    part: cycle.part,
    isOutside: outside.get(cycle.part) === cycle,
  }));
}

/** Vertex from which a half-edge leaves. */
export function originOf(edges: readonly TraceableEdge[], half: number): number {
  const edge = itemAt(edges, half >> 1);
  return half % 2 === 0 ? edge.start : edge.end;
}

function spanOfHalf(edges: readonly TraceableEdge[], half: number): Span {
  const { span } = itemAt(edges, half >> 1);
  return half % 2 === 0 ? span : reverseSpan(span);
}

export function loopOfHalves(edges: readonly TraceableEdge[], halves: readonly number[]): Loop {
  return halves.map((half) => spanOfHalf(edges, half));
}

/** For each half-edge the one that follows it round the face on its left. */
function linkHalves(edges: readonly TraceableEdge[], vertexCount: number): Int32Array {
  const leaving: number[][] = Array.from({ length: vertexCount }, () => []);
  for (let half = 0; half < 2 * edges.length; half++) itemAt(leaving, originOf(edges, half)).push(half);
  const nextHalf = new Int32Array(2 * edges.length);
  for (const halves of leaving) {
    const around = orderAround(halves.map((half) => ({ half, span: spanOfHalf(edges, half) })));
    around.forEach(({ half }, at) => {
      // Arriving against `half`, the sharpest left turn is its neighbour clockwise.
      const clockwise = around[at === 0 ? around.length - 1 : at - 1];
      if (clockwise !== undefined) nextHalf[half ^ 1] = clockwise.half;
    });
  }
  return nextHalf;
}

/** A strip of triangles between an outer loop and the one hole in it, by walking both and always taking the shorter step. */

import { itemAt } from '#geometry/assert.ts';
import { SAME_GAP } from '#geometry/tolerances.ts';
import type { VertexLoop } from './contour-outline.ts';
import { addTriangle, doubleArea, type MeshDraft } from './mesh-draft.ts';

export interface ZipRules {
  /** Stage number by stage index. */
  readonly numbers: readonly number[];
  /** Squared steps of the lattice: a triangle with both its sides across the strip longer than that is looked at. */
  readonly squaredReach: number;
  /** Whether such a triangle keeps to the front. */
  readonly isTrue: (a: number, b: number, c: number) => boolean;
}

/**
 * Zips two loops, both counter-clockwise; false, with nothing added, where a plain walk would fold over, make a triangle of no
 * area, or reach over a crest. No triangle folded means that the strip covers the ground between the loops once: its border
 * winds once around it.
 */
export function zipLoops(draft: MeshDraft, outer: VertexLoop, inner: VertexLoop, rules: ZipRules): boolean {
  const { numbers, squaredReach, isTrue } = rules;
  const around = outer.vertices;
  const within = inner.vertices;
  const n = around.length;
  const m = within.length;
  const shift = nearestTo(draft, itemAt(around, 0), within);
  const before = draft.triangleCount;
  let i = 0;
  let j = 0;
  while (i < n || j < m) {
    const a = around[i % n] as number;
    const aNext = around[(i + 1) % n] as number;
    const b = within[(j + shift) % m] as number;
    const bNext = within[(j + 1 + shift) % m] as number;
    const fitsOuter = i < n && doubleArea(draft, a, aNext, b) > 0;
    const fitsInner = j < m && doubleArea(draft, a, bNext, b) > 0;
    if (!fitsOuter && !fitsInner) {
      draft.triangleCount = before;
      return false;
    }
    const outerGap = squaredGap(draft, aNext, b);
    const innerGap = squaredGap(draft, a, bNext);
    const takesOuter = fitsOuter && (!fitsInner || outerGap <= innerGap * (1 + SAME_GAP));
    const least = Math.min(squaredGap(draft, a, b), takesOuter ? outerGap : innerGap);
    if (least > squaredReach && !isTrue(a, takesOuter ? aNext : bNext, b)) {
      draft.triangleCount = before;
      return false;
    }
    if (takesOuter) {
      addTriangle(draft, [a, aNext, b], stageOfEdge(outer, i % n, numbers));
      i++;
    } else {
      addTriangle(draft, [a, bNext, b], stageOfEdge(inner, (j + shift) % m, numbers));
      j++;
    }
  }
  return true;
}

function stageOfEdge(loop: VertexLoop, edge: number, numbers: readonly number[]): number {
  return numbers[itemAt(loop.stages, edge)] ?? 0;
}

function nearestTo(draft: MeshDraft, vertex: number, others: readonly number[]): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  others.forEach((other, k) => {
    const gap = squaredGap(draft, vertex, other);
    if (gap < least * (1 - SAME_GAP)) {
      least = gap;
      best = k;
    }
  });
  return best;
}

function squaredGap({ xs, ys }: MeshDraft, a: number, b: number): number {
  const dx = (xs[a] as number) - (xs[b] as number);
  const dy = (ys[a] as number) - (ys[b] as number);
  return dx * dx + dy * dy;
}

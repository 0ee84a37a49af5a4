/** A strip of triangles between an outer ring and the one hole in it, by walking both and always taking the shorter step. */
import { itemAt } from '#geometry/assert.ts';
import { type Ring, reverseRing } from './contour-outline.ts';
import { addTriangle, doubleArea, type MeshDraft } from './mesh-draft.ts';

/** Round concentric arcs the two steps are equally long: which is taken may not hang on rounding, which differs from engine to engine. */
const TIE = 1e-9;

/**
 * Zips the rings; false, with nothing added, where a plain walk would fold over by more than `fold` mm².
 * No triangle folded means that the strip covers the ground between the rings once: its border winds once around it.
 */
export function zipRings(
  draft: MeshDraft,
  outer: Ring,
  hole: Ring,
  { numbers, fold }: { numbers: readonly number[]; fold: number },
): boolean {
  const inner = reverseRing(hole);
  const n = outer.vertices.length;
  const m = inner.vertices.length;
  const shift = nearestTo(draft, itemAt(outer.vertices, 0), inner.vertices);
  const before = draft.triangleCount;
  let folded = 0;
  let i = 0;
  let j = 0;
  while (i < n || j < m) {
    const a = itemAt(outer.vertices, i % n);
    const aNext = itemAt(outer.vertices, (i + 1) % n);
    const b = itemAt(inner.vertices, (j + shift) % m);
    const bNext = itemAt(inner.vertices, (j + 1 + shift) % m);
    const outerArea = i < n ? doubleArea(draft, a, aNext, b) : Number.NEGATIVE_INFINITY;
    const innerArea = j < m ? doubleArea(draft, a, bNext, b) : Number.NEGATIVE_INFINITY;
    const bothFit = outerArea >= 0 && innerArea >= 0;
    const takesOuter = bothFit
      ? squaredGap(draft, aNext, b) <= squaredGap(draft, a, bNext) * (1 + TIE)
      : outerArea > innerArea;
    folded -= Math.min(0, takesOuter ? outerArea : innerArea);
    if (folded > 2 * fold) {
      draft.triangleCount = before;
      return false;
    }
    if (takesOuter) {
      addTriangle(draft, a, aNext, b, stageOfEdge(outer, i % n, numbers));
      i++;
    } else {
      addTriangle(draft, a, bNext, b, stageOfEdge(inner, (j + shift) % m, numbers));
      j++;
    }
  }
  return true;
}

function stageOfEdge(ring: Ring, edge: number, numbers: readonly number[]): number {
  return numbers[itemAt(ring.stages, edge)] ?? 0;
}

function nearestTo(draft: MeshDraft, vertex: number, others: readonly number[]): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  others.forEach((other, k) => {
    const gap = squaredGap(draft, vertex, other);
    if (gap < least * (1 - TIE)) {
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

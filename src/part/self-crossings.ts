/** Outlines that cross or touch themselves: inside and outside then change places where nobody may have meant it. */
import type { DrawnCurve } from '#drawing/drawing.ts';
import { type Finding, finding } from '#findings/finding.ts';
import type { Arrangement } from '#geometry/arrangement/arrangement.ts';
import { itemAt } from '#geometry/assert.ts';

/** One finding for each closed outline that passes a place twice, at the first such place. */
export function selfCrossings(
  { edges, vertices }: Arrangement,
  drawn: { readonly curves: readonly DrawnCurve[]; readonly among: readonly number[] },
): Finding[] {
  const closed = new Set(drawn.among.filter((source) => itemAt(drawn.curves, source).closed));
  const passes = new Map<number, Map<number, number>>();
  for (const { sources, start, end } of edges) {
    for (const source of sources) {
      if (!closed.has(source)) continue;
      const atVertex = passes.get(source) ?? new Map<number, number>();
      passes.set(source, atVertex);
      for (const vertex of [start, end]) atVertex.set(vertex, (atVertex.get(vertex) ?? 0) + 1);
    }
  }
  const findings: Finding[] = [];
  for (const [source, atVertex] of [...passes].sort(([a], [b]) => a - b)) {
    const crossed = [...atVertex].filter(([, ends]) => ends > 2).map(([vertex]) => vertex);
    if (crossed.length === 0) continue;
    const { kind, layer, line } = itemAt(drawn.curves, source);
    const at = itemAt(
      vertices,
      crossed.reduce((least, vertex) => Math.min(least, vertex)),
    );
    findings.push(finding('outline-crosses-itself', { kind, times: crossed.length }, { at, layer, line }));
  }
  return findings;
}

/**
 * What was taken out because it bordered nothing, reported once for each stretch that hangs together. Stretches that only meet
 * at what was kept are kept apart: two ends that stand over at one corner are two.
 */

import { itemAt } from '#geometry/assert.ts';
import { disjointSets } from '#geometry/disjoint-sets.ts';
import type { Point } from '#geometry/point.ts';
import { pointAlong, spanLength } from '#geometry/span.ts';
import { SILENT_JOIN } from '#geometry/tolerances.ts';
import type { LineworkTrouble } from './arrangement.ts';
import { comparePoints } from './canonical-spans.ts';
import type { Segment } from './split-spans.ts';

/** `isBridge` marks the segments that were taken out. Stretches up to `SILENT_JOIN` are rounding, and not reported. */
export function findDangling(
  linework: { segments: readonly Segment[]; points: readonly Point[] },
  isBridge: readonly boolean[],
): LineworkTrouble[] {
  const { segments, points } = linework;
  const degree = new Map<number, number>();
  const kept = new Set<number>();
  segments.forEach(({ start, end }, number) => {
    for (const place of [start, end]) {
      degree.set(place, (degree.get(place) ?? 0) + 1);
      if (isBridge[number] !== true) kept.add(place);
    }
  });
  const dropped = segments.filter((_, number) => isBridge[number]);
  const trouble: LineworkTrouble[] = [];
  for (const stretch of connectedStretches(dropped, kept)) {
    const length = stretch.reduce((sum, { span }) => sum + spanLength(span), 0);
    if (length <= SILENT_JOIN) continue;
    const loose = stretch
      .flatMap(({ start, end }) => [start, end])
      .filter((place) => degree.get(place) === 1)
      .map((place) => itemAt(points, place))
      .sort(comparePoints);
    const at = loose[0] ?? pointAlong(itemAt(stretch, 0).span, 0.5);
    const sources = [...new Set(stretch.flatMap((segment) => segment.sources))].sort((a, b) => a - b);
    trouble.push({ kind: 'dangling', sources, at, length });
  }
  return trouble;
}

/** Pieces that hang together at places where nothing kept ends. */
function connectedStretches(segments: readonly Segment[], kept: ReadonlySet<number>): Segment[][] {
  const sets = disjointSets(segments.length);
  const lastAt = new Map<number, number>();
  segments.forEach(({ start, end }, number) => {
    for (const place of [start, end]) {
      if (kept.has(place)) continue;
      const other = lastAt.get(place);
      if (other !== undefined) sets.unite(other, number);
      lastAt.set(place, number);
    }
  });
  const stretches = new Map<number, Segment[]>();
  segments.forEach((segment, number) => {
    const root = sets.find(number);
    const stretch = stretches.get(root);
    if (stretch === undefined) stretches.set(root, [segment]);
    else stretch.push(segment);
  });
  return [...stretches.values()];
}

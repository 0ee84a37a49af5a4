/** What was taken out because it bordered nothing, told once for each curve and connected stretch. */
import type { LineworkTrouble } from './arrangement.ts';
import { itemAt } from './assert.ts';
import { comparePoints } from './canonical-spans.ts';
import { disjointSets } from './disjoint-sets.ts';
import type { Point } from './point.ts';
import { pointAlong, spanLength } from './span.ts';
import type { Piece } from './split-spans.ts';
import { SILENT_JOIN } from './tolerances.ts';

/** `isBridge` marks the pieces that were taken out. Stretches up to `SILENT_JOIN` are rounding, and not told. */
export function findDangling(
  linework: { pieces: readonly Piece[]; points: readonly Point[] },
  isBridge: readonly boolean[],
): LineworkTrouble[] {
  const { pieces, points } = linework;
  const degree = new Map<number, number>();
  for (const { start, end } of pieces) {
    degree.set(start, (degree.get(start) ?? 0) + 1);
    degree.set(end, (degree.get(end) ?? 0) + 1);
  }
  const dropped = pieces.filter((_, number) => isBridge[number]);
  const trouble: LineworkTrouble[] = [];
  for (const stretch of connectedStretches(dropped)) {
    const length = stretch.reduce((sum, { span }) => sum + spanLength(span), 0);
    if (length <= SILENT_JOIN) continue;
    const first = itemAt(stretch, 0);
    const loose = stretch
      .flatMap(({ start, end }) => [start, end])
      .filter((place) => degree.get(place) === 1)
      .map((place) => itemAt(points, place))
      .sort(comparePoints);
    const at = loose[0] ?? pointAlong(first.span, 0.5);
    trouble.push({ kind: 'dangling', source: itemAt(first.sources, 0), at, length });
  }
  return trouble;
}

/** Pieces of one curve that hang together. */
function connectedStretches(pieces: readonly Piece[]): Piece[][] {
  const sets = disjointSets(pieces.length);
  const lastAt = new Map<string, number>();
  pieces.forEach(({ sources, start, end }, number) => {
    for (const place of [start, end]) {
      const key = `${itemAt(sources, 0)} ${place}`;
      const other = lastAt.get(key);
      if (other !== undefined) sets.unite(other, number);
      lastAt.set(key, number);
    }
  });
  const stretches = new Map<number, Piece[]>();
  pieces.forEach((piece, number) => {
    const root = sets.find(number);
    const stretch = stretches.get(root);
    if (stretch === undefined) stretches.set(root, [piece]);
    else stretch.push(piece);
  });
  return [...stretches.values()];
}

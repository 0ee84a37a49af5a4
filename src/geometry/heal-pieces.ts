/**
 * Pieces of one span joined again where nothing meets them any more, because what met them bordered nothing and was
 * taken out. A stray line thus leaves no vertex behind, and an arc that is whole again is its old self bit for bit.
 */
import type { SourcedSpan } from './arrangement.ts';
import { itemAt } from './assert.ts';
import type { Point } from './point.ts';
import { type Piece, partOfSpan } from './split-spans.ts';

export function healPieces(
  pieces: readonly Piece[],
  linework: { spans: readonly SourcedSpan[]; points: readonly Point[] },
): Piece[] {
  const degree = new Int32Array(linework.points.length);
  for (const { start, end } of pieces) {
    degree[start] = itemAt(degree, start) + 1;
    degree[end] = itemAt(degree, end) + 1;
  }
  const healed: Piece[] = [];
  for (const piece of [...pieces].sort((a, b) => a.parent - b.parent || a.from - b.from)) {
    const before = healed.at(-1);
    if (before !== undefined && degree[piece.start] === 2 && isContinued(before, piece)) {
      const { from, start } = before;
      const { to, end } = piece;
      const ends = { start: itemAt(linework.points, start), end: itemAt(linework.points, end) };
      const { span } = itemAt(linework.spans, piece.parent);
      healed[healed.length - 1] = { ...before, to, end, span: partOfSpan(span, { from, to }, ends) };
    } else healed.push(piece);
  }
  return healed;
}

function isContinued(before: Piece, piece: Piece): boolean {
  return (
    before.parent === piece.parent &&
    before.end === piece.start &&
    before.start !== piece.end &&
    before.sources.length === piece.sources.length &&
    before.sources.every((source, i) => source === piece.sources[i])
  );
}

/**
 * Pieces of one span joined again where nothing meets them any more, because what met them bordered nothing and was
 * taken out. A stray line thus leaves no vertex behind, and an arc that is whole again is its old self bit for bit.
 */

import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import type { SourcedSpan } from './arrangement.ts';
import { partOfSpan, type Segment } from './split-spans.ts';

export function mergeSegments(
  segments: readonly Segment[],
  linework: { spans: readonly SourcedSpan[]; points: readonly Point[] },
): Segment[] {
  const degree = new Int32Array(linework.points.length);
  for (const { start, end } of segments) {
    degree[start] = itemAt(degree, start) + 1;
    degree[end] = itemAt(degree, end) + 1;
  }
  const healed: Segment[] = [];
  for (const segment of [...segments].sort((a, b) => a.parent - b.parent || a.from - b.from)) {
    const before = healed.at(-1);
    if (before !== undefined && degree[segment.start] === 2 && isContinued(before, segment)) {
      const { from, start } = before;
      const { to, end } = segment;
      const ends = { start: itemAt(linework.points, start), end: itemAt(linework.points, end) };
      const { span } = itemAt(linework.spans, segment.parent);
      healed[healed.length - 1] = { ...before, to, end, span: partOfSpan(span, { from, to }, ends) };
    } else healed.push(segment);
  }
  return healed;
}

function isContinued(before: Segment, segment: Segment): boolean {
  return (
    before.parent === segment.parent &&
    before.end === segment.start &&
    before.start !== segment.end &&
    before.sources.length === segment.sources.length &&
    before.sources.every((source, i) => source === segment.sources[i])
  );
}

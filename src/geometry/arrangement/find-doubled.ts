/**
 * Curves drawn twice. A border that two outlines share is no trouble, nor is a line along the side of a rectangle: a
 * curve is doubled when the whole of it runs where the whole of another does, or when it runs over itself.
 */

import { itemAt } from '#geometry/assert.ts';
import { pointAlong } from '#geometry/span.ts';
import type { LineworkTrouble } from './arrangement.ts';
import type { SplitLinework } from './split-spans.ts';

export function findDoubled({
  segments,
  retraced,
}: Pick<SplitLinework, 'segments' | 'retraced'>): LineworkTrouble[] {
  const ways = new Map<number, number[]>();
  segments.forEach(({ sources }, number) => {
    for (const source of sources) {
      const way = ways.get(source);
      if (way === undefined) ways.set(source, [number]);
      else way.push(number);
    }
  });
  const trouble: LineworkTrouble[] = [];
  const firstOnWay = new Map<string, number>();
  for (const [source, way] of [...ways].sort(([a], [b]) => a - b)) {
    // A curve with a stretch of its own is not doubled: most are not, and need no key.
    if (way.some((number) => itemAt(segments, number).sources.length === 1)) continue;
    const key = way.join(' ');
    const other = firstOnWay.get(key);
    if (other === undefined) firstOnWay.set(key, source);
    else {
      const at = pointAlong(itemAt(segments, itemAt(way, 0)).span, 0.5);
      trouble.push({ kind: 'doubled', source, other, at });
    }
  }
  for (const [source, at] of retraced) trouble.push({ kind: 'doubled', source, other: source, at });
  return trouble;
}

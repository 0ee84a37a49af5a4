import { describe, expect, test } from 'vitest';
import type { SourcedSpan } from '#geometry/arrangement/arrangement.ts';
import { canonicalSpans } from '#geometry/arrangement/canonical-spans.ts';
import { findFreeEnds } from '#geometry/arrangement/free-ends.ts';
import { limitEffort } from '#geometry/effort.ts';
import { lineSpan, type Span } from '#geometry/span.ts';
import { rectangle } from '#support/geometry/shapes.ts';

const NO_LIMIT = { pairs: Number.POSITIVE_INFINITY, meetings: Number.POSITIVE_INFINITY };
const line = (x0: number, y0: number, x1: number, y1: number) => lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 });

/** Where ends are free, and the gap to the nearest other end and the nearest curve. */
function freeEnds(curves: readonly (readonly Span[])[], reach = 1, most = NO_LIMIT) {
  const spans = canonicalSpans(
    curves.flatMap((curve, source) => curve.map((span): SourcedSpan => ({ span, source }))),
  );
  return findFreeEnds(spans, { reach, effort: limitEffort(most) }).map(
    ({ span, atEnd, point, nearestEnd, nearestSpan }) => {
      const own = spans[span]?.span;
      expect(atEnd ? own?.end : own?.start).toEqual(point);
      const toSpan = nearestSpan && [
        spans[nearestSpan.number]?.source,
        Math.round(nearestSpan.gap * 1e6) / 1e6,
      ];
      return { at: [point.x, point.y], toEnd: nearestEnd && Math.round(nearestEnd.gap * 1e6) / 1e6, toSpan };
    },
  );
}

describe('free ends', () => {
  test('a closed outline and a line from side to side have none', () => {
    expect(freeEnds([rectangle(0, 0, 9, 5), [line(3, 0, 4, 5)]])).toEqual([]);
  });

  test('two that face each other over a gap name each other', () => {
    expect(freeEnds([[line(0, 0, 4, 0)], [line(4.3, 0.4, 9, 3)]])).toEqual([
      { at: [0, 0], toEnd: undefined, toSpan: undefined },
      { at: [4, 0], toEnd: 0.5, toSpan: [1, 0.5] },
      { at: [4.3, 0.4], toEnd: 0.5, toSpan: [0, 0.5] },
      { at: [9, 3], toEnd: undefined, toSpan: undefined },
    ]);
  });

  test('one that stops 0.7 short of a side names the side, within its reach only', () => {
    const drawn = [rectangle(0, 0, 9, 5), [line(3, 0.7, 4, 5)]];
    expect(freeEnds(drawn)).toEqual([{ at: [3, 0.7], toEnd: undefined, toSpan: [0, 0.7] }]);
    expect(freeEnds(drawn, 0.6)).toEqual([{ at: [3, 0.7], toEnd: undefined, toSpan: undefined }]);
  });

  test('one that has run past a side has no gap to it', () => {
    expect(freeEnds([rectangle(0, 0, 9, 5), [line(3, -0.2, 4, 5)]])).toEqual([
      { at: [3, -0.2], toEnd: undefined, toSpan: undefined },
    ]);
  });

  test('the stretch of its own curve that led to it is no neighbour; one that comes back to it is', () => {
    const wavy = [line(0, 0, 0.3, 0.1), line(0.3, 0.1, 0.6, 0), line(0.6, 0, 0.9, 0.1)];
    expect(freeEnds([wavy]).map(({ toSpan }) => toSpan)).toEqual([undefined, undefined]);
    const round = [line(0, 0, 4, 0), line(4, 0, 4, 3), line(4, 3, 0, 3), line(0, 3, 0, 0.4)];
    expect(freeEnds([round]).map(({ toEnd, toSpan }) => [toEnd, toSpan])).toEqual([
      [0.4, [0, 0.4]],
      [0.4, [0, 0.4]],
    ]);
  });

  test('fewer are reported where there are more pairs to look at than allowed', () => {
    const many = Array.from({ length: 6 }, (_, i) => [line(3 * i, 0, 3 * i + 2, 0)]);
    expect(freeEnds(many)).toHaveLength(12);
    expect(freeEnds(many, 1, { pairs: 20, meetings: 9 }).length).toBeLessThan(12);
  });
});

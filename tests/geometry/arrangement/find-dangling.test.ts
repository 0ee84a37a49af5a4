import { describe, expect, test } from 'vitest';
import type { SourcedSpan } from '#geometry/arrangement/arrangement.ts';
import { canonicalSpans } from '#geometry/arrangement/canonical-spans.ts';
import { findBridges } from '#geometry/arrangement/find-bridges.ts';
import { findDangling } from '#geometry/arrangement/find-dangling.ts';
import { splitSpans } from '#geometry/arrangement/split-spans.ts';
import { limitEffort } from '#geometry/effort.ts';
import { lineSpan, type Span } from '#geometry/span.ts';
import { rectangle } from '#support/geometry/shapes.ts';

const NO_LIMIT = { pairs: Number.POSITIVE_INFINITY, meetings: Number.POSITIVE_INFINITY };
const line = (x0: number, y0: number, x1: number, y1: number) => lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 });

function dangling(...curves: readonly (readonly Span[])[]) {
  const spans = curves.flatMap((curve, source) => curve.map((span): SourcedSpan => ({ span, source })));
  const split = splitSpans(canonicalSpans(spans), limitEffort(NO_LIMIT));
  return findDangling(split, findBridges(split.segments, split.points.length));
}

const outline = rectangle(0, 0, 20, 10);

describe('what borders nothing', () => {
  test('is reported once a stretch, with its length, its curves and its loose end', () => {
    expect(dangling(outline, [line(20, 4, 25, 4)], [line(25, 4, 25, 7)])).toEqual([
      { kind: 'dangling', sources: [1, 2], at: { x: 25, y: 7 }, length: 8 },
    ]);
  });

  test('of two loose ends names the left one, of those above each other the lower', () => {
    expect(dangling([line(9, 1, 4, 6)]).map(({ at }) => at)).toEqual([{ x: 4, y: 6 }]);
    expect(dangling([line(4, 6, 4, 2)]).map(({ at }) => at)).toEqual([{ x: 4, y: 2 }]);
  });

  test('two that stand over at one corner are two', () => {
    const found = dangling(outline, [line(20, 10, 26, 10)], [line(20, 10, 20, 13)]);
    expect([...found].sort((a, b) => a.at.x - b.at.x)).toEqual([
      { kind: 'dangling', sources: [2], at: { x: 20, y: 13 }, length: 3 },
      { kind: 'dangling', sources: [1], at: { x: 26, y: 10 }, length: 6 },
    ]);
  });

  test('a bridge between two outlines has no loose end: its middle is named', () => {
    expect(dangling(outline, rectangle(30, 0, 40, 10), [line(20, 5, 30, 5)])).toEqual([
      { kind: 'dangling', sources: [2], at: { x: 25, y: 5 }, length: 10 },
    ]);
  });

  test('up to 0.001 mm is rounding', () => {
    expect(dangling(outline, [line(20, 4, 20.000_99, 4)])).toEqual([]);
    expect(dangling(outline, [line(20, 4, 20.001_01, 4)])).toHaveLength(1);
  });
});

import { describe, expect, test } from 'vitest';
import type { SourcedSpan } from '#geometry/arrangement/arrangement.ts';
import { canonicalSpans } from '#geometry/arrangement/canonical-spans.ts';
import { partOfSpan, splitSpans } from '#geometry/arrangement/split-spans.ts';
import { limitEffort } from '#geometry/effort.ts';
import { arcSpan, lineSpan, type Span, spanLength } from '#geometry/span.ts';

const line = (x0: number, y0: number, x1: number, y1: number) => lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 });
const NO_LIMIT = { pairs: Number.POSITIVE_INFINITY, meetings: Number.POSITIVE_INFINITY };
const split = (spans: readonly Span[], most = NO_LIMIT) =>
  splitSpans(canonicalSpans(spans.map((span, source): SourcedSpan => ({ span, source }))), limitEffort(most));
/** Length and sources of every segment, in order. */
const segments = (spans: readonly Span[]) =>
  split(spans).segments.map(({ span, sources }) => [Math.round(spanLength(span) * 1e6) / 1e6, sources]);

describe('linework cut where it meets itself', () => {
  test('a crossing makes four segments that share one place', () => {
    const { segments: found } = split([line(0, 2, 10, 2), line(3, 0, 3, 9)]);
    expect(found.map(({ span }) => spanLength(span))).toEqual([3, 7, 2, 7]);
    const counts = new Map<number, number>();
    for (const { start, end } of found) {
      for (const place of [start, end]) counts.set(place, (counts.get(place) ?? 0) + 1);
    }
    expect([...counts.values()].sort()).toEqual([1, 1, 1, 1, 4]);
  });

  test('an overlap is one segment of both curves', () => {
    expect(segments([line(0, 0, 10, 0), line(7, 0, 15, 0)])).toEqual([
      [7, [0]],
      [3, [0, 1]],
      [5, [1]],
    ]);
  });

  test('a shorter line over the first stretch of a longer one, drawn after it, is named after it', () => {
    expect(segments([line(0, 0, 15, 0), line(0, 0, 4, 0)])).toEqual([
      [4, [0, 1]],
      [11, [0]],
    ]);
  });

  test('a line drawn to the end of one that stands over is cut too where it then comes near another end', () => {
    // 0.00004 mm is one place; 0.00007 mm is not, but 0.00003 mm from where the line runs once it is drawn over.
    const over = line(4, 5, 4, -0.00004);
    const near = line(3.9, -7, 3.9, -0.00007);
    const { segments: found, points } = split([line(0, 0, 10, 0), over, near]);
    expect(found.map(({ span }) => Math.round(spanLength(span) * 1000) / 1000).sort()).toEqual([
      0.1, 3.9, 5, 6, 7,
    ]);
    const ends = found.flatMap(({ start, end }) => [start, end]).map((place) => points[place]?.y);
    expect(ends.filter((y) => y === -0.00007)).toHaveLength(3);
  });

  test('three curves over one stretch are reported in ascending order', () => {
    expect(segments([line(4, 0, 0, 0), line(0, 0, 4, 0), line(0, 0, 4, 0)])).toEqual([[4, [0, 1, 2]]]);
  });

  test('a line and an arc over the same ends stay two', () => {
    const arc = arcSpan({ center: { x: 5, y: 0 }, radius: 5, from: 0, sweep: Math.PI });
    expect(segments([line(0, 0, 10, 0), arc])).toHaveLength(2);
  });

  test('a curve that runs over itself is reported with the middle of the stretch', () => {
    const twice = canonicalSpans([
      { span: line(0, 0, 8, 0), source: 3 },
      { span: line(8, 0, 2, 0), source: 3 },
    ]);
    const { retraced, segments: found } = splitSpans(twice, limitEffort(NO_LIMIT));
    expect([...retraced]).toEqual([[3, { x: 5, y: 0 }]]);
    expect(found.map(({ span, sources }) => [spanLength(span), sources])).toEqual([
      [2, [3]],
      [6, [3]],
    ]);
  });

  test('stops where there were more meetings, or pairs to look at, than allowed', () => {
    const grid = [line(0, 1, 9, 1), line(0, 2, 9, 2), line(3, 0, 3, 9), line(5, 0, 5, 9)];
    expect(split(grid, { pairs: 1e6, meetings: 4 }).segments).toHaveLength(12);
    expect(split(grid, { pairs: 1e6, meetings: 3 }).segments).toEqual([]);
    expect(split(grid, { pairs: 5, meetings: 1e6 }).segments).toEqual([]);
  });
});

test('part of an arc keeps its circle and the share of its sweep', () => {
  const arc = arcSpan({ center: { x: 1, y: 2 }, radius: 5, from: 0, sweep: -2 });
  const ends = { start: { x: 1, y: 1 }, end: { x: 0, y: 0 } };
  expect(partOfSpan(arc, { from: 0.25, to: 0.75 }, ends)).toEqual({ ...arc, ...ends, sweep: -1 });
  expect(partOfSpan(line(0, 0, 1, 1), { from: 0.25, to: 0.75 }, ends)).toEqual({ kind: 'line', ...ends });
});

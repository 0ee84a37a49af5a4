import { expect, test } from 'vitest';
import type { SourcedSpan } from '#geometry/arrangement/arrangement.ts';
import { canonicalSpans } from '#geometry/arrangement/canonical-spans.ts';
import { findDoubled } from '#geometry/arrangement/find-doubled.ts';
import { splitSpans } from '#geometry/arrangement/split-spans.ts';
import { limitEffort } from '#geometry/effort.ts';
import { lineSpan } from '#geometry/span.ts';

const NO_LIMIT = { pairs: Number.POSITIVE_INFINITY, meetings: Number.POSITIVE_INFINITY };
const doubled = (...drawn: readonly (readonly [x0: number, x1: number, source: number])[]) => {
  const spans = drawn.map(([x0, x1, source]): SourcedSpan => {
    return { span: lineSpan({ x: x0, y: 1 }, { x: x1, y: 1 }), source };
  });
  return findDoubled(splitSpans(canonicalSpans(spans), limitEffort(NO_LIMIT)));
};

test('a curve drawn twice is reported once, by the later number, at the middle of its first segment', () => {
  expect(doubled([0, 6, 4], [6, 0, 9])).toEqual([
    { kind: 'doubled', source: 9, other: 4, at: { x: 3, y: 1 } },
  ]);
});

test('one drawn three times is reported twice, each beside the first', () => {
  expect(
    doubled([0, 6, 2], [0, 6, 7], [0, 6, 5]).map((each) => 'other' in each && [each.source, each.other]),
  ).toEqual([
    [5, 2],
    [7, 2],
  ]);
});

test('several are in the order of their numbers, wherever they lie', () => {
  const found = doubled([0, 3, 8], [0, 3, 7], [4, 9, 2], [9, 4, 5]);
  expect(found.map((each) => 'other' in each && [each.source, each.other, each.at.x])).toEqual([
    [5, 2, 6.5],
    [8, 7, 1.5],
  ]);
});

test('a line along part of another, or two that share a stretch, are no trouble', () => {
  expect(doubled([0, 6, 0], [2, 5, 1])).toEqual([]);
  expect(doubled([0, 6, 0], [4, 9, 1])).toEqual([]);
});

test('a line that two others cover, though neither does alone, is no double of either', () => {
  expect(doubled([0, 9, 0], [0, 4, 1], [4, 9, 2])).toEqual([]);
});

test('a curve that runs back over itself is its own double', () => {
  expect(doubled([0, 8, 3], [8, 2, 3])).toEqual([
    { kind: 'doubled', source: 3, other: 3, at: { x: 5, y: 1 } },
  ]);
});

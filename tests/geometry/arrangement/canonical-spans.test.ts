import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SourcedSpan } from '#geometry/arrangement/arrangement.ts';
import { canonicalSpans, comparePoints } from '#geometry/arrangement/canonical-spans.ts';
import { arcSpan, lineSpan, reverseSpan, spanFromBulge } from '#geometry/span.ts';

const from = { x: 1, y: 4 };
const to = { x: 6, y: 2 };

test('points come by x, then by y', () => {
  const points = [
    { x: 2, y: 1 },
    { x: 1, y: 9 },
    { x: 1, y: 3 },
  ];
  expect([...points].sort(comparePoints)).toEqual([
    { x: 1, y: 3 },
    { x: 1, y: 9 },
    { x: 2, y: 1 },
  ]);
});

describe('linework in an order of its own', () => {
  test('spans run from their lower end up, upright ones by y', () => {
    const upright = lineSpan({ x: 3, y: 8 }, { x: 3, y: 5 });
    const spans = [
      { span: lineSpan(to, from), source: 0 },
      { span: upright, source: 1 },
    ];
    expect(canonicalSpans(spans)).toEqual([
      { span: lineSpan(from, to), source: 0 },
      { span: lineSpan({ x: 3, y: 5 }, { x: 3, y: 8 }), source: 1 },
    ]);
  });

  test('of those between the same ends the line is first, then arcs from the most clockwise on', () => {
    const bulges = [0.7, -0.2, 0, 0.1, -0.9];
    const spans = bulges.map((bulge, source) => ({ span: spanFromBulge(from, to, bulge), source }));
    expect(canonicalSpans(spans).map(({ source }) => source)).toEqual([2, 4, 1, 3, 0]);
  });

  test('the same curve drawn twice goes by its source', () => {
    const spans = [5, 2, 9].map((source) => ({ span: lineSpan(from, to), source }));
    expect(canonicalSpans(spans).map(({ source }) => source)).toEqual([2, 5, 9]);
  });

  test('is the same, bit for bit, in whatever order and direction the curves are drawn', () => {
    const whole = fc.integer({ min: -5, max: 5 });
    const span = fc.oneof(
      fc.tuple(whole, whole, whole, whole).map(([x, y, toX, toY]) => lineSpan({ x, y }, { x: toX, y: toY })),
      fc
        .tuple(whole, whole, fc.integer({ min: 1, max: 3 }))
        .map(([x, y, radius]) => arcSpan({ center: { x, y }, radius, from: 0.4, sweep: 1.7 })),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(span, fc.boolean(), fc.nat(99)), { maxLength: 12 }), (drawn) => {
        const spans = drawn.map(([each], source): SourcedSpan => ({ span: each, source }));
        const otherwise = drawn
          .map(([each, flips, rank], source) => ({ span: flips ? reverseSpan(each) : each, source, rank }))
          .sort((a, b) => a.rank - b.rank)
          .map(({ span: each, source }): SourcedSpan => ({ span: each, source }));
        expect(canonicalSpans(otherwise)).toEqual(canonicalSpans(spans));
      }),
    );
  });
});

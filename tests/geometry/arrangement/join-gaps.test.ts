import { describe, expect, test } from 'vitest';
import type { SourcedSpan } from '#geometry/arrangement/arrangement.ts';
import { canonicalSpans } from '#geometry/arrangement/canonical-spans.ts';
import { joinGaps } from '#geometry/arrangement/join-gaps.ts';
import { limitEffort } from '#geometry/effort.ts';
import { arcSpan, lineSpan, type Span } from '#geometry/span.ts';
import { rectangle } from '#support/geometry/shapes.ts';

const NO_LIMIT = { pairs: Number.POSITIVE_INFINITY, meetings: Number.POSITIVE_INFINITY };
const line = (x0: number, y0: number, x1: number, y1: number) => lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 });

function joined(curves: readonly (readonly Span[])[], joinTolerance = 0.05) {
  const spans = curves.flatMap((curve, source) => curve.map((span): SourcedSpan => ({ span, source })));
  const { spans: after, trouble } = joinGaps(canonicalSpans(spans), {
    joinTolerance,
    effort: limitEffort(NO_LIMIT),
  });
  return {
    of: (source: number) => after.filter((each) => each.source === source).map(({ span }) => span),
    trouble,
  };
}
const near = (x: number, y: number) => ({ x: expect.closeTo(x, 9), y: expect.closeTo(y, 9) });

describe('two free ends', () => {
  test('meet where their lines cross', () => {
    const { of, trouble } = joined([[line(0, 0, 8.97, 0)], [line(9, 0.02, 9, 6)]]);
    expect(of(0)).toMatchObject([{ start: { x: 0, y: 0 }, end: near(9, 0) }]);
    expect(of(1)).toMatchObject([{ start: near(9, 0), end: { x: 9, y: 6 } }]);
    expect(trouble).toEqual([
      { kind: 'joined-gap', sources: [0, 1], at: near(9, 0), gap: expect.closeTo(Math.hypot(0.03, 0.02), 9) },
    ]);
  });

  test('of parallel lines meet half-way', () => {
    const { of } = joined([[line(0, 0, 5, 0)], [line(5.02, 0.01, 9, 0.01)]]);
    expect(of(0)).toMatchObject([{ end: near(5.01, 0.005) }]);
    expect(of(1)).toMatchObject([{ start: near(5.01, 0.005) }]);
  });

  test('of a line and an arc that do not cross meet at the arc’s end, which stays as drawn', () => {
    const arc = arcSpan({ center: { x: 5, y: 3 }, radius: 3, from: -Math.PI / 2, sweep: 1.2 });
    const { of } = joined([[line(0, -0.01, 4.98, -0.01)], [arc]]);
    expect(of(1)).toEqual([arc]);
    expect(of(0)).toMatchObject([{ start: { x: 0, y: -0.01 }, end: arc.start }]);
  });

  test('0.0009 mm apart are joined without a word, even with no tolerance; 0.0011 apart are open', () => {
    expect(joined([[line(0, 0, 5, 0)], [line(5.0009, 0, 5.0009, 4)]], 0).trouble).toEqual([]);
    expect(joined([[line(0, 0, 5, 0)], [line(5.0009, 0, 5.0009, 4)]], 0).of(0)).toMatchObject([
      { end: near(5.0009, 0) },
    ]);
    expect(joined([[line(0, 0, 5, 0)], [line(5.0011, 0, 5.0011, 4)]], 0).of(0)).toEqual([line(0, 0, 5, 0)]);
  });

  test('with a web between them go to its sides, each to its own', () => {
    // 0.045 apart; the web, from 4.992 to 5.009, is 0.012 from one and 0.016 from the other.
    const web = rectangle(4.992, -3, 5.009, 7);
    const { of, trouble } = joined([[line(0, 2, 4.98, 2)], [line(5.025, 2, 9, 2)], web]);
    expect(of(0)).toMatchObject([{ start: { x: 0, y: 2 }, end: near(4.992, 2) }]);
    expect(of(1)).toMatchObject([{ start: near(5.009, 2), end: { x: 9, y: 2 } }]);
    expect(trouble.map((each) => 'sources' in each && each.sources)).toEqual([
      [0, 2],
      [1, 2],
    ]);
  });

  test('farther apart than the tolerance stay, and are reported once, half-way', () => {
    const { of, trouble } = joined([[line(0, 0, 5, 0)], [line(5.2, 0.1, 9, 4)]]);
    expect(of(0)).toEqual([line(0, 0, 5, 0)]);
    expect(trouble).toEqual([
      {
        kind: 'open-gap',
        sources: [0, 1],
        at: near(5.1, 0.05),
        gap: expect.closeTo(Math.hypot(0.2, 0.1), 9),
      },
    ]);
    expect(joined([[line(0, 0, 5, 0)], [line(5.6, 0, 9, 4)]]).trouble).toEqual([]);
  });
});

describe('an end that stops short of a side', () => {
  test('by more than the tolerance stays, and is reported where it stops', () => {
    const { of, trouble } = joined([rectangle(20, -5, 30, 8), [line(3, 2, 19.8, 2)]]);
    expect(of(1)).toEqual([line(3, 2, 19.8, 2)]);
    expect(trouble).toEqual([
      { kind: 'open-gap', sources: [0, 1], at: { x: 19.8, y: 2 }, gap: expect.closeTo(0.2, 9) },
    ]);
  });

  test('is run straight on to it', () => {
    // 3 along for 4 up: 0.04 short in y is 0.03 in x.
    const { of, trouble } = joined([rectangle(0, 0, 20, 9), [line(6, 8, 12 - 0.03, 0.04)]]);
    expect(of(1)).toMatchObject([{ end: near(12, 0) }]);
    expect(trouble).toMatchObject([
      { kind: 'joined-gap', sources: [0, 1], at: near(12, 0), gap: expect.closeTo(0.04, 9) },
    ]);
  });

  test('goes to the nearest place where straight on is far', () => {
    // 10 along for 1 up.
    const { of } = joined([rectangle(0, 0, 20, 9), [line(4, 0.73, 11, 0.03)]]);
    expect(of(1)).toMatchObject([{ end: near(11, 0) }]);
  });

  test('goes to the corner where that is nearest', () => {
    const { of } = joined([rectangle(0, 0, 20, 9), [line(25, 14, 20.02, 9.03)]]);
    expect(of(1)).toMatchObject([{ start: { x: 20, y: 9 }, end: { x: 25, y: 14 } }]);
  });
});

test('an end that would move farther than half its own short span stays, and a line leads on from it', () => {
  const curve = [line(0, 0, 5, 0), line(5, 0, 5.03, 0)];
  const { of } = joined([curve, [line(5.07, -4, 5.07, 4)]]);
  expect(of(0)).toHaveLength(3);
  expect(of(0)).toContainEqual(line(5, 0, 5.03, 0));
  expect(of(0)).toContainEqual({ kind: 'line', start: { x: 5.03, y: 0 }, end: near(5.07, 0) });
});

test('a curve shorter than twice the gap is left alone', () => {
  const { of } = joined([[line(5, 0, 5.06, 0)], [line(5.1, -4, 5.1, 4)]]);
  expect(of(0)).toEqual([line(5, 0, 5.06, 0)]);
});

test('an arc run on along its own circle keeps it', () => {
  const arc = arcSpan({ center: { x: 0, y: 0 }, radius: 10, from: 0.5, sweep: 1 });
  const end = { x: 10 * Math.cos(1.503), y: 10 * Math.sin(1.503) };
  const { of } = joined([[arc], [lineSpan({ x: end.x, y: 0 }, { x: end.x, y: 30 })]]);
  expect(of(0)).toMatchObject([{ kind: 'arc', center: { x: 0, y: 0 }, radius: 10 }]);
  const [kept] = of(0);
  expect(kept?.kind === 'arc' && Math.abs(kept.sweep)).toBeCloseTo(1.003, 6);
});

/** Bands between parallels, against closed forms and against the same bands read on the grid by winding number. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gridOrigin, gridPolygonOf, positivelyWound } from '#geometry/grow/grid-polygons.ts';
import { parallelBands } from '#geometry/grow/parallel-bands.ts';
import { pushPoint, pushSide } from '#geometry/grow/push-border.ts';
import { rebuildLoops, spansOf } from '#geometry/grow/rebuild-loops.ts';
import { type Loop, loopArea, loopsArea, reverseSpan, reverseSpans, type Span } from '#geometry/span.ts';
import { curveGap } from '#support/geometry/curve-gap.ts';
import { randomOutlines } from '#support/geometry/random-outlines.ts';
import { circle, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';

/** The same, read on the grid. */
function onGrid(spans: readonly Span[], width: number): Loop[] {
  const origin = gridOrigin(spans);
  const sides = spans.flatMap((span) => [span, reverseSpan(span)]).map((span) => pushSide({ span, width }));
  const pushed = [
    ...sides,
    ...spans.flatMap(({ start, end }) => [start, end]).map((at) => pushPoint(at, width)),
  ];
  const carriers = pushed.flatMap((each) => each.carriers).map((span) => ({ span, isKnown: false }));
  const chains = pushed.flatMap((each) => each.chains).map((chain) => reverseSpans(chain));
  return rebuildLoops(
    positivelyWound(chains.map((chain) => gridPolygonOf(chain, origin))),
    carriers,
    origin,
  ).map(spansOf);
}

/** Every other one turned round, and the last first. */
const jumbled = (spans: readonly Span[]): Span[] =>
  spans.map((span, at) => (at % 2 === 0 ? span : reverseSpan(span))).reverse();

test('round a rectangle: a frame, sharp inside and round outside, however it is drawn', () => {
  const area = 2 * 29 * 2.5 - 4 * 1.25 ** 2 + Math.PI * 1.25 ** 2;
  for (const drawn of [rectangle(3, 1, 23, 10), jumbled(rectangle(3, 1, 23, 10))]) {
    const band = parallelBands(drawn, 1.25) ?? [];
    expect(band.map((loop) => Math.sign(loopArea(loop)))).toEqual([1, -1]);
    expect(loopsArea(band)).toBeCloseTo(area, 9);
  }
});

test('round a circle: a ring, in half turns', () => {
  const band = parallelBands(circle(4, -2, 9), 0.7) ?? [];
  expect(loopsArea(band)).toBeCloseTo(Math.PI * (9.7 ** 2 - 8.3 ** 2), 9);
  expect(band.map((loop) => loop.length)).toEqual([2, 2]);
});

test('sides drawn in several pieces come out in one', () => {
  const [bottom, ...others] = rectangle(0, 0, 20, 9);
  const middle = { x: 7.3, y: 0 };
  const drawn =
    bottom === undefined ? [] : [{ ...bottom, end: middle }, { ...bottom, start: middle }, ...others];
  expect((parallelBands(drawn, 1) ?? []).map((loop) => loop.length)).toEqual([8, 4]);
});

test('round two borders, one in the other: outer loops first', () => {
  const band = parallelBands([...roundedRectangle(0, 0, 60, 40, 6), ...circle(31, 18, 7)], 0.4) ?? [];
  expect(band.map((loop) => Math.sign(loopArea(loop)))).toEqual([1, 1, -1, -1]);
  const lengths = 2 * (48 + 28) + Math.PI * 12 + Math.PI * 14;
  expect(loopsArea(band)).toBeCloseTo(lengths * 0.8, 9);
});

describe('it takes the grid', () => {
  test('where a border is open, or three lines meet', () => {
    const frame = rectangle(0, 0, 20, 9);
    expect(parallelBands(frame.slice(1), 1)).toBeUndefined();
    const spoke = { kind: 'line' as const, start: { x: 20, y: 9 }, end: { x: 31, y: 14 } };
    expect(parallelBands([...frame, spoke], 1)).toBeUndefined();
    expect(parallelBands(frame, 1)).toHaveLength(2);
  });

  test('where both sides of a border meet inside it, or two bands each other', () => {
    expect(parallelBands(rectangle(0, 0, 20, 4), 2)).toBeUndefined();
    const apart = (gap: number) => [...rectangle(0, 0, 20, 9), ...rectangle(20 + gap, 1, 33, 8)];
    expect(parallelBands(apart(2.01), 1)).toBeUndefined();
    expect(parallelBands(apart(2.05), 1)).toHaveLength(4);
  });
});

test('random borders, alone or about another: as on the grid, to a nanometre', () => {
  let made = 0;
  fc.assert(
    fc.property(
      randomOutlines,
      fc.integer({ min: 2, max: 25 }),
      fc.boolean(),
      (outline, tenths, isInside) => {
        const width = tenths / 10;
        const drawn = jumbled([...(isInside ? rectangle(-48, -50, 46, 52) : []), ...outline]);
        const bands = parallelBands(drawn, width);
        if (bands === undefined) return;
        made++;
        const grid = onGrid(drawn, width);
        expect(bands).toHaveLength(grid.length);
        expect(curveGap(bands.flat(), grid.flat())).toBeLessThan(1e-6);
        expect(loopsArea(bands)).toBeCloseTo(loopsArea(grid), 4);
      },
    ),
    { numRuns: 100 },
  );
  expect(made).toBeGreaterThan(20);
});

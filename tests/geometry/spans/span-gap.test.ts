import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arcSpan, lineSpan, pointAlong, type Span } from '#geometry/span.ts';
import { spanGap } from '#geometry/spans/span-gap.ts';

const at = fc.integer({ min: -40, max: 40 }).map((tenths) => tenths / 4);
const point = fc.record({ x: at, y: at });
const line = fc
  .tuple(point, point)
  .filter(([a, b]) => Math.hypot(a.x - b.x, a.y - b.y) > 0.1)
  .map(([a, b]): Span => lineSpan(a, b));
const arc = fc
  .record({
    center: point,
    radius: fc.integer({ min: 1, max: 32 }).map((each) => each / 4),
    from: fc.integer({ min: -30, max: 30 }).map((each) => each / 10),
    sweep: fc
      .integer({ min: -31, max: 31 })
      .filter((each) => each !== 0)
      .map((each) => each / 10),
  })
  .map((each): Span => arcSpan(each));
const span = fc.oneof(line, arc);

test('the gap of two spans is that of all pairs of their points', { tags: ['long'] }, () => {
  const places = (one: Span) => Array.from({ length: 201 }, (_, step) => pointAlong(one, step / 200));
  fc.assert(
    fc.property(span, span, (a, b) => {
      const gap = spanGap(a, b);
      expect(spanGap(b, a)).toBeCloseTo(gap, 9);
      let least = Number.POSITIVE_INFINITY;
      for (const p of places(a))
        for (const q of places(b)) least = Math.min(least, Math.hypot(p.x - q.x, p.y - q.y));
      expect(gap).toBeLessThanOrEqual(least + 1e-9);
      // Steps are up to 0.14 long: two points half a step off on either span.
      expect(least).toBeLessThan(gap + 0.16);
    }),
    { numRuns: 40 },
  );
});

describe('gaps worked by hand', () => {
  const between = (x0: number, y0: number, x1: number, y1: number) =>
    lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 });
  const round = (x: number, y: number, radius: number, from: number, sweep: number) =>
    arcSpan({ center: { x, y }, radius, from, sweep });
  const upper = round(7, 2, 5, 0, Math.PI);

  test.each([
    ['ends of lines, 3 and 4 apart', between(0, 0, 3, 0), between(6, 4, 9, 9), 5],
    ['an end over the middle of a line', between(0, 0, 9, 0), between(4, 2.5, 7, 8), 2.5],
    ['lines that cross', between(0, 0, 9, 6), between(3, 0, 3, 8), 0],
    ['a level line 8 over the centre of R 5', upper, between(0, 10, 20, 10), 3],
    ['one under its ends', upper, between(0, -1.5, 20, -1.5), 3.5],
    [
      'a slanting line 10 from the centre of R 7, nearest at (6, 8)',
      round(0, 0, 7, 0.5, 1),
      between(10, 5, 2, 11),
      3,
    ],
    [
      'one that R 7 does not face: from its end',
      round(0, 0, 7, 2, 1.1),
      between(10, 5, 2, 11),
      Math.hypot(7 * Math.cos(2) - 2, 7 * Math.sin(2) - 11),
    ],
    ['R 2 and R 3 that face each other, 10 apart', round(1, 2, 2, -1, 2), round(11, 2, 3, 2.2, 2), 5],
    ['R 2 within R 6, 1 aside', round(1, 2, 6, -1, 2), round(2, 2, 2, -1, 2), 3],
    ['R 2 within R 6 about one centre', round(1, 2, 6, -1, 2), round(1, 2, 2, -0.5, 2), 4],
    [
      'R 2 and R 3 turned away from each other: between their ends',
      round(1, 2, 2, 2, 2),
      round(11, 2, 3, -1, 2),
      Math.hypot(10 + 3 * Math.cos(1) - 2 * Math.cos(2), 3 * Math.sin(1) - 2 * Math.sin(2)),
    ],
  ])('%s', (_, a, b, gap) => {
    expect(spanGap(a, b)).toBeCloseTo(gap, 9);
    expect(spanGap(b, a)).toBeCloseTo(gap, 9);
  });
});

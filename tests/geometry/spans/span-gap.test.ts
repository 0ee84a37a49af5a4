import fc from 'fast-check';
import { expect, test } from 'vitest';
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

/** Laws that every arrangement must keep, on random linework. fast-check prints the seed of a failing run. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arrange } from '#geometry/arrangement/arrange.ts';
import type { SourcedSpan } from '#geometry/arrangement/arrangement.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, pointAlong, spanLength } from '#geometry/span.ts';
import { SAME_PLACE } from '#geometry/tolerances.ts';
import { arrangementFaults } from '#support/geometry/arrangement-faults.ts';
import { moveSpan, shake, shuffle } from '#support/geometry/move-spans.ts';
import { anyLinework } from '#support/geometry/random-linework.ts';

const RUNS = { numRuns: 200 };

const KINDS = [
  { where: 'on a coarse grid, where everything touches and overlaps', onGrid: true },
  { where: 'anywhere', onGrid: false },
];

function distanceToSource(spans: readonly SourcedSpan[], source: number, place: Point): number {
  const own = spans.filter((each) => each.source === source);
  return Math.min(...own.map(({ span }) => distanceToSpan(span, place)));
}

/** What does not change when linework is moved: counts, and areas when scaled back. */
function measures(spans: readonly SourcedSpan[]) {
  const { arrangement } = arrange(spans, { joinTolerance: 0 });
  expect(arrangementFaults(arrangement)).toEqual([]);
  const { vertices, edges, faces } = arrangement;
  return {
    counts: [vertices.length, edges.length, faces.length],
    areas: faces.map(({ area }) => area).sort((a, b) => a - b),
  };
}

function expectSame(
  got: ReturnType<typeof measures>,
  wanted: ReturnType<typeof measures>,
  { factor, share }: { factor: number; share: number },
): void {
  expect(got.counts).toEqual(wanted.counts);
  wanted.areas.forEach((area, i) => {
    expect(Math.abs((got.areas[i] ?? 0) / factor ** 2 - area)).toBeLessThan(share * (1 + area));
  });
}

describe.each(KINDS)('linework $where', ({ onGrid }) => {
  test("Euler's formula, closed loops, outer ones counter-clockwise, areas that add up", {
    tags: ['long'],
  }, () => {
    fc.assert(
      fc.property(anyLinework(onGrid), (spans) => {
        const { arrangement } = arrange(spans, { joinTolerance: 0.05 });
        expect(arrangementFaults(arrangement)).toEqual([]);
      }),
      RUNS,
    );
  });

  test('order and direction of drawing make no difference, not in one bit', { tags: ['long'] }, () => {
    const ranks = fc.array(fc.nat(1000), { minLength: 7, maxLength: 30 });
    const flips = fc.array(fc.boolean(), { minLength: 3, maxLength: 11 });
    fc.assert(
      fc.property(anyLinework(onGrid), ranks, flips, (spans, order, flip) => {
        const asDrawn = arrange(spans, { joinTolerance: 0.05 });
        const shuffled = arrange(shuffle(spans, order, flip), { joinTolerance: 0.05 });
        expect(shuffled.arrangement).toEqual(asDrawn.arrangement);
      }),
      RUNS,
    );
  });

  test('moved, turned, mirrored and scaled linework falls into the same faces', { tags: ['long'] }, () => {
    const shift = fc.double({ min: -4e7, max: 4e7, noNaN: true });
    const movement = fc.record({
      turn: fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
      // Places within a fixed distance are one place, so only linework without near misses can be scaled.
      factor: onGrid ? fc.double({ min: 0.5, max: 3, noNaN: true }) : fc.constant(1),
      mirrored: fc.boolean(),
      shift: fc.record({ x: shift, y: shift }),
    });
    fc.assert(
      fc.property(anyLinework(onGrid), movement, (spans, move) => {
        const moved = spans.map(({ span, source }) => ({ span: moveSpan(span, move), source }));
        expectSame(measures(moved), measures(spans), { factor: move.factor, share: 1e-6 });
      }),
      RUNS,
    );
  });

  test('every edge lies on each of its sources, and no source that runs there is forgotten', {
    tags: ['long'],
  }, () => {
    fc.assert(
      fc.property(anyLinework(onGrid), (spans) => {
        const { arrangement } = arrange(spans, { joinTolerance: 0 });
        for (const { span, sources } of arrangement.edges) {
          const places = [0.25, 0.5, 0.75].map((share) => pointAlong(span, share));
          // An edge may run along several spans of one source: a curve counts as a whole.
          const near = [...new Set(spans.map(({ source }) => source))]
            .sort((a, b) => a - b)
            .filter((source) =>
              places.every((place) => distanceToSource(spans, source, place) <= 2 * SAME_PLACE),
            );
          expect(near).toEqual(expect.arrayContaining([...sources]));
          // A curve that only touches is as near as this over some tenths of a millimetre, but not over a whole one.
          if (spanLength(span) > 1) expect(sources).toEqual(near);
        }
      }),
      RUNS,
    );
  });
});

test('figures rounded to six decimals of an inch leave every face of grid linework as it was', {
  tags: ['long'],
}, () => {
  // Half of 1e-6 in is 1.27e-5 mm: each end of each span is off by itself.
  const error = fc.double({ min: -1.27e-5, max: 1.27e-5, noNaN: true });
  const errors = fc.array(fc.record({ x: error, y: error }), { minLength: 13, maxLength: 40 });
  fc.assert(
    fc.property(anyLinework(true), errors, (spans, offsets) => {
      const [drawn, shaken] = [measures(spans), measures(shake(spans, offsets))];
      // Where a stray line was taken out, a vertex may stay on a border that several curves share: faces are what counts.
      const facesOnly = { ...shaken, counts: [...drawn.counts.slice(0, 2), shaken.counts[2] ?? 0] };
      expectSame(facesOnly, drawn, { factor: 1, share: 1e-3 });
    }),
    RUNS,
  );
});

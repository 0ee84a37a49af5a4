import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { itemAt } from '#geometry/assert.ts';
import { distanceToSpan, pointAlong } from '#geometry/span.ts';
import { pathOfContour } from '#handoff/contour.ts';
import { mergeMicroSegments } from '#handoff/merge-micro-segments.ts';
import type { Contour } from '#job/formats/plan-file.ts';

const least = 0.01;
const round = (value: number): number => Number(value.toFixed(6));

function merge(contour: Contour): Contour {
  const merged = mergeMicroSegments(contour, { least, round });
  if (merged === undefined) throw new Error('nothing left');
  return merged;
}

/** The largest distance from points along one contour to the other, both ways. */
function gapBetween(a: Contour, b: Contour): number {
  const oneWay = (from: Contour, to: Contour): number => {
    const spans = pathOfContour(to).spans;
    let worst = 0;
    for (const span of pathOfContour(from).spans) {
      for (const share of [0, 0.25, 0.5, 0.75, 1]) {
        const point = pointAlong(span, share);
        worst = Math.max(worst, Math.min(...spans.map((each) => distanceToSpan(each, point))));
      }
    }
    return worst;
  };
  return Math.max(oneWay(a, b), oneWay(b, a));
}

function shortest({ closed, vertices }: Contour): number {
  const ends = closed ? [...vertices, itemAt(vertices, 0)] : vertices;
  let least = Number.POSITIVE_INFINITY;
  for (let index = 1; index < ends.length; index++) {
    const [x, y] = itemAt(ends, index - 1);
    const [endX, endY] = itemAt(ends, index);
    least = Math.min(least, Math.hypot(endX - x, endY - y));
  }
  return least;
}

describe('which place stands for both ends of a short segment', () => {
  const line = (closed: boolean, ...vertices: Contour['vertices']): Contour => ({ closed, vertices });

  it('is the end at a corner that the line reaches there, closed or open, first segment or last', () => {
    const corner = [
      [29.996, 0, 0],
      [30, 0, 0],
      [30, 17, 0],
    ] as const;
    expect(merge(line(true, [0, 0, 0], ...corner)).vertices).toEqual([
      [0, 0, 0],
      [30, 0, 0],
      [30, 17, 0],
    ]);
    expect(merge(line(false, [0, 0, 0], ...corner)).vertices).toEqual([
      [0, 0, 0],
      [30, 0, 0],
      [30, 17, 0],
    ]);
    // Nothing is before the start of an open line: half way, 0.0015 mm off either.
    expect(merge(line(false, [2, 1, 0], [2.003, 1, 0], [2.003, 17, 0])).vertices).toEqual([
      [2.0015, 1, 0],
      [2.003, 17, 0],
    ]);
  });

  it('is the start where any of them lies on the line', () => {
    expect(merge(line(false, [0, 0, 0], [10, 0, 0], [10.004, 0, 0], [30, 0, 0])).vertices).toEqual([
      [0, 0, 0],
      [10, 0, 0],
      [30, 0, 0],
    ]);
  });

  it('is the corner itself where a vertex before it is drawn three times', () => {
    const thrice = [0, 0, 0] as const;
    const drawn = line(false, [-20, 0, 0], thrice, thrice, thrice, [0.004, 0, 0], [0.004, 30, 0]);
    expect(merge(drawn).vertices).toEqual([
      [-20, 0, 0],
      [0.004, 0, 0],
      [0.004, 30, 0],
    ]);
  });

  it('is the middle where its end would carry a half turn with it: 0.004 mm at the crown', () => {
    // The half turn comes down at the start; the end lies straight on, and the line leaves at 20° from there.
    const [end, turn] = [-0.008, Math.PI / 9];
    const drawn = line(
      false,
      [24, 0, 1],
      [0, 0, 0],
      [0, end, 0],
      [30 * Math.sin(turn), end - 30 * Math.cos(turn), 0],
    );
    expect(merge(drawn).vertices[1]).toEqual([0, -0.004, 0]);
  });

  it('is looked for between the last vertex of a closed line and its first too', () => {
    expect(
      merge(line(true, [0, 0, 0.3], [30, 0, 0], [30, 17, 0], [0, 17, 0], [0, 0.004, 0])).vertices,
    ).toEqual([
      [0, 0, 0.3],
      [30, 0, 0],
      [30, 17, 0],
      [0, 17, 0],
    ]);
    // Where the first has just been merged, its arc stays with it.
    const both = line(true, [0, 0, 0], [0.004, 0, 0.3], [30, 0, 0], [30, 17, 0], [0, 17, 0], [0, 0.004, 0]);
    expect(merge(both).vertices.map(([, , bulge]) => bulge)).toEqual([0.3, 0, 0, 0]);
    expect(merge({ ...both, closed: false }).vertices).toHaveLength(5);
  });

  it('is none where a segment is just as long as the least', () => {
    const quarter = { least: 0.25, round: (value: number) => value };
    const drawn = line(true, [0, 0, 0], [0.25, 0, 0], [0.25, 6, 0], [0, 0.25, 0]);
    expect(mergeMicroSegments(drawn, quarter)).toEqual(drawn);
  });
});

describe('segments too short for a machine', () => {
  it('leaves an outline without any as it is', () => {
    const square: Contour = {
      closed: true,
      vertices: [
        [0, 0, 0],
        [10, 0, 0],
        [10, 10, 0],
        [0, 10, 0],
      ],
    };
    expect(merge(square)).toEqual(square);
  });

  it('keeps the corner where a run of short segments ends on a long one', () => {
    const vertices: [number, number, number][] = [[0, 0, 0]];
    for (let step = 0; step <= 20; step++) vertices.push([10, step * 0.004, 0]);
    vertices.push([10, 10, 0], [0, 10, 0]);
    const merged = merge({ closed: true, vertices });
    expect(shortest(merged)).toBeGreaterThanOrEqual(least - 1e-9);
    expect(gapBetween(merged, { closed: true, vertices })).toBeLessThan(1e-6);
  });

  it('moves a step between two parallels by no more than half of the least length', () => {
    const step: Contour = {
      closed: false,
      vertices: [
        [0, 0, 0],
        [10, 0, 0],
        [10, 0.0098, 0],
        [20, 0.0098, 0],
      ],
    };
    const merged = merge(step);
    expect(merged.vertices).toHaveLength(3);
    expect(gapBetween(merged, step)).toBeLessThanOrEqual(0.005);
  });

  it('turns a fillet smaller than the least length into a corner', () => {
    const fillet: Contour = {
      closed: true,
      vertices: [
        [0, 0, 0],
        [9.995, 0, Math.tan(Math.PI / 8)],
        [10, 0.005, 0],
        [10, 10, 0],
        [0, 10, 0],
      ],
    };
    const merged = merge(fillet);
    expect(merged.vertices).toHaveLength(4);
    expect(gapBetween(merged, fillet)).toBeLessThan(0.005);
  });

  it('keeps the ends of an open line whose last segment is short', () => {
    const open: Contour = {
      closed: false,
      vertices: [
        [0, 0, 0],
        [10, 0, 0],
        [10.005, 0, 0],
      ],
    };
    expect(merge(open).vertices).toEqual([
      [0, 0, 0],
      [10.005, 0, 0],
    ]);
  });

  it('drops an outline that is nothing but short segments', () => {
    const speck: Contour = {
      closed: true,
      vertices: [
        [0, 0, 0],
        [0.004, 0, 0],
        [0.002, 0.004, 0],
      ],
    };
    expect(mergeMicroSegments(speck, { least, round })).toBeUndefined();
  });

  it('stays within 0.005 mm on any outline with one short segment between long ones', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.0005, max: 0.0099, noNaN: true }),
        fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
        fc.double({ min: -2.5, max: 2.5, noNaN: true }),
        fc.double({ min: -0.5, max: 0.5, noNaN: true }),
        (length, direction, turn, bulge) => {
          const x = 10 + length * Math.cos(direction);
          const y = length * Math.sin(direction);
          const contour: Contour = {
            closed: false,
            vertices: [
              [0, 0, bulge],
              [10, 0, 0],
              [x, y, bulge],
              [x + 8 * Math.cos(turn), y + 8 * Math.sin(turn), 0],
            ],
          };
          const merged = merge(contour);
          expect(shortest(merged)).toBeGreaterThanOrEqual(least - 1e-9);
          expect(gapBetween(merged, contour)).toBeLessThanOrEqual(0.005 + 1e-6);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('ends in seconds on a hundred thousand points 0.003 mm apart', { tags: ['long'] }, () => {
    const vertices: [number, number, number][] = [];
    for (let step = 0; step < 100_000; step++) {
      const angle = (step * 2 * Math.PI) / 100_000;
      vertices.push([50 * Math.cos(angle), 50 * Math.sin(angle), 0]);
    }
    const merged = merge({ closed: true, vertices });
    expect(shortest(merged)).toBeGreaterThanOrEqual(least - 1e-9);
    for (const [x, y] of merged.vertices) expect(Math.abs(Math.hypot(x, y) - 50)).toBeLessThan(0.001);
  });
});

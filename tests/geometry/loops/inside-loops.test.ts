import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { distance, type Point } from '#geometry/point.ts';
import { arcSpan, type Loop, lineSpan, reverseSpans, spanFromBulge } from '#geometry/span.ts';

function circle(center: Point, radius: number): Loop {
  return [0, Math.PI].map((from) => arcSpan({ center, radius, from, sweep: Math.PI }));
}

/** A pocket 40 × 20 with round ends of radius 10: the points within 10 of the segment from (10, 10) to (30, 10). */
const SLOT: Loop = [
  lineSpan({ x: 10, y: 0 }, { x: 30, y: 0 }),
  spanFromBulge({ x: 30, y: 0 }, { x: 30, y: 20 }, 1),
  lineSpan({ x: 30, y: 20 }, { x: 10, y: 20 }),
  spanFromBulge({ x: 10, y: 20 }, { x: 10, y: 0 }, 1),
];

function distanceToSpine({ x, y }: Point): number {
  return distance({ x, y }, { x: Math.min(30, Math.max(10, x)), y: 10 });
}

const anywhere = fc.record({
  x: fc.double({ min: -20, max: 60, noNaN: true }),
  y: fc.double({ min: -20, max: 40, noNaN: true }),
});

describe('a point in a pocket with round ends', () => {
  test('is inside when it lies within the radius of the spine (property)', () => {
    fc.assert(
      fc.property(anywhere, (point) => {
        const reach = distanceToSpine(point);
        fc.pre(Math.abs(reach - 10) > 1e-9);
        expect(isInsideLoops([SLOT], point)).toBe(reach < 10);
        expect(isInsideLoops([reverseSpans(SLOT)], point)).toBe(reach < 10);
      }),
      { numRuns: 500 },
    );
  });

  test('is outside on an island, and inside around it', () => {
    const loops = [SLOT, reverseSpans(circle({ x: 20, y: 10 }, 4))];
    expect(isInsideLoops(loops, { x: 20, y: 10 })).toBe(false);
    expect(isInsideLoops(loops, { x: 23.9, y: 10 })).toBe(false);
    expect(isInsideLoops(loops, { x: 24.1, y: 10 })).toBe(true);
  });

  test('counts a bay that an arc bulges into as outside', () => {
    const notched: Loop = [
      lineSpan({ x: 0, y: 0 }, { x: 20, y: 0 }),
      spanFromBulge({ x: 20, y: 0 }, { x: 20, y: 20 }, -0.5),
      lineSpan({ x: 20, y: 20 }, { x: 0, y: 20 }),
      lineSpan({ x: 0, y: 20 }, { x: 0, y: 0 }),
    ];
    // A bulge of 0.5 over a chord of 20 has a sagitta of 5: the arc comes to x = 15.
    expect(isInsideLoops([notched], { x: 14.99, y: 10 })).toBe(true);
    expect(isInsideLoops([notched], { x: 15.01, y: 10 })).toBe(false);
    expect(isInsideLoops([notched], { x: 19, y: 0.5 })).toBe(true);
  });
});

test('the middle of a circle is inside, wherever its arcs begin and whichever way they run', () => {
  for (let turn = 0; turn < 16; turn++) {
    const from = (turn * Math.PI) / 8;
    const arcs = [from, from + Math.PI].map((start) =>
      arcSpan({ center: { x: 0, y: 0 }, radius: 3, from: start, sweep: Math.PI }),
    );
    expect(isInsideLoops([arcs], { x: 0, y: 0 })).toBe(true);
    expect(isInsideLoops([reverseSpans(arcs)], { x: 0, y: 0 })).toBe(true);
  }
});

/** A label must stand well inside its face, whatever the face's shape. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arrange } from '#geometry/arrangement/arrange.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { labelPoint } from '#geometry/loops/label-point.ts';
import { distanceToSpan, type Loop, reverseSpans } from '#geometry/span.ts';
import { anyLinework } from '#support/geometry/random-linework.ts';
import { circle, polygon, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';

function room(loops: readonly Loop[]): number {
  const label = labelPoint(loops);
  expect(isInsideLoops(loops, label)).toBe(true);
  return Math.min(...loops.flat().map((span) => distanceToSpan(span, label)));
}

describe('label points', () => {
  test('of a rectangle and a circle: the middle', () => {
    expect(labelPoint([rectangle(10, 20, 40, 30)])).toEqual({ x: 25, y: 25 });
    expect(labelPoint([circle(7, -3, 9)]).x).toBeCloseTo(7, 9);
    expect(labelPoint([circle(7, -3, 9)]).y).toBeCloseTo(-3, 9);
  });

  test('of a ring: in the ring, half its width from either edge', () => {
    expect(room([circle(0, 0, 30), reverseSpans(circle(0, 0, 10))])).toBeCloseTo(10, 6);
  });

  test('of an L, a frame and a crescent: not in the notch, hole or bay', () => {
    const corner: [number, number][] = [
      [0, 0],
      [60, 0],
      [60, 10],
      [12, 10],
      [12, 50],
      [0, 50],
    ];
    expect(room([polygon(corner)])).toBeGreaterThan(4.9);
    expect(
      room([roundedRectangle(0, 0, 80, 60, 8), reverseSpans(rectangle(10, 10, 70, 50))]),
    ).toBeGreaterThan(4.9);
    const crescent = arrange(
      [circle(0, 0, 20), circle(12, 0, 14)].flatMap((loop, source) => loop.map((span) => ({ span, source }))),
      { joinTolerance: 0 },
    ).arrangement.faces.map(({ loops }) => loops);
    expect(room(crescent[1] ?? [])).toBeGreaterThan(5);
  });

  test('of the faces of random linework: always inside', { tags: ['long'] }, () => {
    fc.assert(
      fc.property(fc.boolean().chain(anyLinework), (spans) => {
        const { faces } = arrange(spans, { joinTolerance: 0 }).arrangement;
        for (const { loops, area } of faces.slice(1)) {
          // Slivers thinner than a hundredth of a millimetre may have no point clearly inside.
          if (area > 0.01) expect(isInsideLoops(loops, labelPoint(loops))).toBe(true);
        }
      }),
      { numRuns: 200 },
    );
  });
});

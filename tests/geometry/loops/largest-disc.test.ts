/** The largest disc in a shape, against closed forms: a strip's half width, a triangle's incircle, the room beside a round hole. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { largestDisc } from '#geometry/loops/largest-disc.ts';
import { type Loop, reverseSpans } from '#geometry/span.ts';
import { moveSpan } from '#support/geometry/move-spans.ts';
import { circle, polygon, rectangle } from '#support/geometry/shapes.ts';

const SEARCH = { within: 5e-4, enough: Number.POSITIVE_INFINITY };

const turned = (loops: readonly Loop[], turn: number): Loop[] =>
  loops.map((loop) =>
    loop.map((span) => moveSpan(span, { turn, factor: 1, mirrored: false, shift: { x: 3, y: -7 } })),
  );

describe('largestDisc', () => {
  test.each([0, 0.3, 1.234, 2.8])('is as wide as a long even strip, turned by %d', (turn) => {
    const { radius } = largestDisc(turned([rectangle(0, 0, 170, 3)], turn), SEARCH);
    expect(radius).toBeCloseTo(1.5, 7);
  });

  test("is a triangle's incircle: twice its area over its perimeter", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 60, noNaN: true }),
        fc.double({ min: 2, max: 40, noNaN: true }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0, max: 6, noNaN: true }),
        (base, height, tip, turn) => {
          const corners = polygon([
            [0, 0],
            [base, 0],
            [tip * base, height],
          ]);
          const sides = base + Math.hypot(tip * base, height) + Math.hypot((1 - tip) * base, height);
          const { radius } = largestDisc(turned([corners], turn), SEARCH);
          const exact = (base * height) / sides;
          expect(radius).toBeLessThanOrEqual(exact + 1e-6);
          expect(radius).toBeGreaterThan(exact - 5e-4);
        },
      ),
    );
  });

  test('keeps out of a hole', () => {
    // 40 by 21 mm with a round hole of radius 5 about (9, 10.5): between it and the right side, held by top and bottom.
    const plate = [rectangle(0, 0, 40, 21), reverseSpans(circle(9, 10.5, 5))];
    const { center, radius } = largestDisc(plate, SEARCH);
    expect(radius).toBeCloseTo(10.5, 6);
    expect(center.x).toBeGreaterThan(9 + 15.5 - 0.01);
  });
});

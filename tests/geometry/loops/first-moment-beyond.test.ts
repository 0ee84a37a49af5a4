import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutFrame } from '#geometry/loops/cut-across.ts';
import { firstMomentBeyond } from '#geometry/loops/first-moment-beyond.ts';
import { type Loop, loopsArea, reverseSpans, spanLength } from '#geometry/span.ts';
import { circle, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';

const RIGHT = { x: 1, y: 0 };

describe('∫ max(0, s − from) dA', () => {
  test('a rectangle 8 × 3 from its middle: half of it, 2 away on average', () => {
    expect(firstMomentBeyond([rectangle(0, 0, 8, 3)], { direction: RIGHT, from: 4 })).toBeCloseTo(
      4 * 3 * 2,
      12,
    );
  });

  test('a disc of radius r from its centre line: 2 r³ / 3', () => {
    expect(firstMomentBeyond([circle(7, -2, 3)], { direction: { x: 0, y: 1 }, from: -2 })).toBeCloseTo(
      18,
      12,
    );
  });

  test('nothing lies beyond the far side; from before the near side it is area × distance of the middle', () => {
    const loops = [circle(7, -2, 3), reverseSpans(circle(7, -2, 1))];
    expect(firstMomentBeyond(loops, { direction: RIGHT, from: 10 })).toBeCloseTo(0, 12);
    expect(firstMomentBeyond(loops, { direction: RIGHT, from: -5 })).toBeCloseTo(12 * loopsArea(loops), 10);
  });

  test('any direction and place: as the cuts across add up', () => {
    const plate: readonly Loop[] = [
      roundedRectangle(-20, -10, 30, 25, 8),
      reverseSpans(circle(5, 5, 6)),
      reverseSpans(rectangle(15, -5, 20, 10)),
    ];
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 359 }), fc.integer({ min: -30, max: 35 }), (degrees, from) => {
        const angle = (degrees * Math.PI) / 180;
        const direction = { x: Math.cos(angle), y: Math.sin(angle) };
        const summed = summedAcross(plate, { direction, from });
        expect(Math.abs(firstMomentBeyond(plate, { direction, from }) - summed)).toBeLessThan(
          2e-3 * summed + 2,
        );
      }),
      { numRuns: 60 },
    );
  });
});

/** Middle rule over thin strips square to the direction. */
function summedAcross(
  loops: readonly Loop[],
  { direction, from }: { readonly direction: { x: number; y: number }; readonly from: number },
): number {
  const frame = cutFrame(loops, direction);
  const strips = 2000;
  const width = (frame.to - frame.from) / strips;
  let sum = 0;
  for (let strip = 0; strip < strips; strip++) {
    const at = frame.from + (strip + 0.5) * width;
    const across = frame.cutsAt(at).reduce((total, cut) => total + spanLength(cut), 0);
    sum += Math.max(0, at - from) * across * width;
  }
  return sum;
}

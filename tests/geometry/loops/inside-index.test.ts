import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isInside, makeInsideIndex } from '#geometry/loops/inside-index.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import {
  arcSpan,
  distanceToSpan,
  type Loop,
  lineSpan,
  pointAlong,
  reverseSpans,
  tangentAlong,
} from '#geometry/span.ts';
import { circle, polygon, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';

describe('inside', () => {
  const plate = [rectangle(0, 0, 40, 10), reverseSpans(circle(11, 6, 3))];
  const upright = [rectangle(0, 0, 10, 40), reverseSpans(circle(6, 11, 3))];

  test.each([
    [1, 1, true],
    [39.9, 9.9, true],
    [11, 6, false],
    [13.9, 6, false],
    [14.1, 6, true],
    [13.2, 8.2, true],
    [13, 8, false],
    [40.1, 5, false],
    [-0.1, 5, false],
    [20, 10.1, false],
    [20, -0.1, false],
    [20, 12.3, false],
    [20, -2.6, false],
    [41.7, 5, false],
    [-1.9, 5, false],
  ])('(%d, %d) of a plate with a hole, lying and standing: %s', (x, y, expected) => {
    expect(isInside(makeInsideIndex(plate), x, y)).toBe(expected);
    expect(isInside(makeInsideIndex(upright), y, x)).toBe(expected);
  });

  test('nothing is inside no loops, or a loop that has no width', () => {
    expect(isInside(makeInsideIndex([]), 0, 0)).toBe(false);
    const flat = [lineSpan({ x: 0, y: 0 }, { x: 5, y: 0 }), lineSpan({ x: 5, y: 0 }, { x: 0, y: 0 })];
    expect(isInside(makeInsideIndex([flat]), 2, 0)).toBe(false);
  });

  test('an arc that bulges beyond its ends holds what lies in the bulge', () => {
    const arc = arcSpan({ center: { x: 0, y: 0 }, radius: 10, from: -1, sweep: 2 });
    const segment: Loop = [arc, lineSpan(arc.end, arc.start)];
    expect(isInside(makeInsideIndex([segment]), 9.5, 0.2)).toBe(true);
    expect(isInside(makeInsideIndex([segment]), 5.3, -0.2)).toBe(false);
    expect(isInside(makeInsideIndex([segment]), 9, 5)).toBe(false);
  });
});

/** Whether points 0.02 mm to the left of places along each span lie inside, and to the right do not. */
function expectSides(loops: readonly Loop[]): void {
  const index = makeInsideIndex(loops);
  for (const span of loops.flat()) {
    for (let place = 1; place < 40; place++) {
      const at = pointAlong(span, place / 40);
      const { x, y } = tangentAlong(span, place / 40);
      expect(isInside(index, at.x - 0.02 * y, at.y + 0.02 * x)).toBe(true);
      expect(isInside(index, at.x + 0.02 * y, at.y - 0.02 * x)).toBe(false);
    }
  }
}

describe('close to a border that is never level nor upright', () => {
  test.each([
    ['lying', 31, 12],
    ['standing', 9, 26],
  ])('of a kite, %s', (_, width, height) => {
    // Far from the zero point, on both sides of it.
    const kite: [number, number][] = [
      [-83, 41],
      [-83 + 0.7 * width, 41 + 0.3 * height],
      [-83 + width, 41 + height],
      [-83 + 0.2 * width, 41 + 0.6 * height],
    ];
    expectSides([polygon(kite)]);
    expectSides([polygon(kite.map(([x, y]) => [-x, -y]))]);
  });

  test.each([0.4, 1.7, 3.3, 4.9])('of all but a segment of a circle that begins at %d rad', (from) => {
    // It turns back along either axis at least three times.
    const arc = arcSpan({ center: { x: 47, y: -19 }, radius: 8, from, sweep: 5.6 });
    const most: Loop = [arc, lineSpan(arc.end, arc.start)];
    expectSides([most]);
    // As a hole, begun at the other end.
    expectSides([rectangle(30, -30, 71, -6), reverseSpans(most)]);
  });
});

test('finds what the turn of all spans round the point says (random plates, holes and islands)', () => {
  const side = fc.integer({ min: 2, max: 60 });
  fc.assert(
    fc.property(
      side,
      side,
      fc.array(fc.tuple(fc.nat(1000), fc.nat(1000)), { maxLength: 30 }),
      (a, b, places) => {
        const loops: Loop[] = [
          roundedRectangle(0, 0, 3 * a, 2 * b, Math.min(a, b) / 2),
          reverseSpans(circle(a, b, Math.min(a, b) * 0.9)),
          polygon([
            [a, b],
            [a + Math.min(a, b) * 0.4, b + Math.min(a, b) * 0.1],
            [a - Math.min(a, b) * 0.2, b + Math.min(a, b) * 0.5],
          ]),
        ];
        const index = makeInsideIndex(loops);
        for (const [shareX, shareY] of places) {
          const point = { x: (3.2 * a * shareX) / 1000 - 0.1 * a, y: (2.2 * b * shareY) / 1000 - 0.1 * b };
          if (loops.flat().some((span) => distanceToSpan(span, point) < 1e-9)) continue;
          expect(isInside(index, point.x, point.y)).toBe(isInsideLoops(loops, point));
        }
      },
    ),
  );
});

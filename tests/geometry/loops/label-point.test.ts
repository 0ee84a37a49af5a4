/** A label must stand well inside its face, whatever the face's shape. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arrange } from '#geometry/arrangement/arrange.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { labelPoint } from '#geometry/loops/label-point.ts';
import type { Point } from '#geometry/point.ts';
import { arcSpan, distanceToSpan, type Loop, reverseSpans } from '#geometry/span.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import { anyLinework } from '#support/geometry/random-linework.ts';
import { circle, polygon, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';

function room(loops: readonly Loop[]): number {
  const label = labelPoint(loops);
  expect(isInsideLoops(loops, label)).toBe(true);
  return Math.min(...loops.flat().map((span) => distanceToSpan(span, label)));
}

function expectAt(label: Point, x: number, y: number): void {
  expect(label.x).toBeCloseTo(x, 9);
  expect(label.y).toBeCloseTo(y, 9);
}

/** A post and a stem on a base, 3 thick, from (7, −11); on the stem a tab that leans to the right, from 15 to 25 high. */
const TAB: readonly (readonly [number, number])[] = [
  [7, -11],
  [67, -11],
  [67, -8],
  [37, -8],
  [37, 15],
  [57, 15],
  [63, 25],
  [23, 25],
  [17, 15],
  [33, 15],
  [33, -8],
  [10, -8],
  [10, 25],
  [7, 25],
];

/** Counter-clockwise from 8 right of the middle and 6 below to 6 right and 8 below. */
const TO_NECK = 2 * Math.PI - (atan2(-6, 8) - atan2(-8, 6));

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

  test('of a sloping tab on a thin stem: halfway up the tab and halfway along, there and turned by half', () => {
    // The tab is 10 high and its ends lean over 6 in 10: at half its height it runs from 20 to 60.
    expectAt(labelPoint([polygon(TAB)]), 40, 20);
    expectAt(labelPoint([polygon(TAB.map(([x, y]) => [-x, -y]))]), -40, -20);
  });

  test('of a triangle: on the fifth of seventeen lines, halfway along it', () => {
    // Legs of 36 and 27, a line every 1.5: at 7.5 up 26 is left, and 7.5 of room; at 6 there is 6, at 9 only 7.2.
    const triangle: [number, number][] = [
      [-4, 2],
      [32, 2],
      [-4, 29],
    ];
    expectAt(labelPoint([polygon(triangle)]), 9, 9.5);
  });

  test('of a round with a narrow neck beside its middle: the middle, though no scan line goes there', () => {
    // The neck, from 6 to 8 right of the middle, leaves a round of radius 10 where it is 8 and 6 below it, and is 27 deep.
    const round = arcSpan({ center: { x: 12, y: -3 }, radius: 10, from: atan2(-6, 8), sweep: TO_NECK });
    const neck = polygon([
      [18, -11],
      [18, -30],
      [20, -30],
      [20, -9],
    ]).slice(0, 3);
    expectAt(labelPoint([[round, ...neck]]), 12, -3);
  });

  test('of a pocket with a channel out of its top: the middle of the pocket, not of both', () => {
    const pocket: [number, number][] = [
      [0, 0],
      [18, 0],
      [18, 18],
      [11, 18],
      [11, 54],
      [8, 54],
      [8, 18],
      [0, 18],
    ];
    expectAt(labelPoint([polygon(pocket)]), 9, 9);
  });

  test('of two pockets alike, joined by a channel: the middle of the lower', () => {
    const both: [number, number][] = [
      [0, 0],
      [18, 0],
      [18, 18],
      [11, 18],
      [11, 36],
      [18, 36],
      [18, 54],
      [0, 54],
      [0, 36],
      [8, 36],
      [8, 18],
      [0, 18],
    ];
    expectAt(labelPoint([polygon(both)]), 9, 9);
  });

  test('of a half round on a thin foot: halfway up the half round', () => {
    // Lines every 2 come 4 and 6 above its chord; the middle is 5 above it.
    const half = arcSpan({ center: { x: -4, y: 2 }, radius: 10, from: 0, sweep: Math.PI });
    const foot = polygon([
      [-14, 2],
      [2, 2],
      [2, -24],
      [4, -24],
      [4, 2],
      [6, 2],
    ]).slice(0, 5);
    expectAt(labelPoint([[half, ...foot]]), -4, 7);
  });

  test('of an outline without width: the middle of its first line', () => {
    const there: [number, number][] = [
      [1, 3],
      [7, 3],
      [19, 3],
    ];
    expectAt(labelPoint([polygon(there)]), 4, 3);
    expectAt(labelPoint([polygon(there.map(([x, y]) => [y, x]))]), 3, 4);
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

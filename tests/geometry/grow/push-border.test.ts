/** Borders pushed into their area, read as areas: what is left in closed form, but for a nudge of 0.00015 mm. */
import { describe, expect, test } from 'vitest';
import type { Carrier } from '#geometry/grow/carrier-finder.ts';
import { gridPolygonOf, positivelyWound } from '#geometry/grow/grid-polygons.ts';
import { type PushedBorder, pushAlone, pushBorder } from '#geometry/grow/push-border.ts';
import { rebuildLoops, spansOf } from '#geometry/grow/rebuild-loops.ts';
import { arcSpan, distanceToSpan, type Loop, lineSpan, loopsArea, reverseSpans } from '#geometry/span.ts';
import { circle, polygon, rectangle } from '#support/geometry/shapes.ts';

const ORIGIN = { x: 0, y: 0 };
const HALF = Math.PI / 2;

/** mm² that is left. */
function areaLeft(borders: readonly PushedBorder[], more: readonly Loop[] = []): number {
  const chains = [...more, ...borders.flatMap((border) => border.chains)];
  const spans = [...more.flat(), ...borders.flatMap(({ carriers }) => carriers)];
  const carriers = spans.map((span): Carrier => ({ span, isKnown: false }));
  const polygons = positivelyWound(chains.map((chain) => gridPolygonOf(chain, ORIGIN)));
  return loopsArea(rebuildLoops(polygons, carriers, ORIGIN).map(spansOf));
}
const pushed = (loop: Loop, ...widths: readonly number[]) =>
  pushBorder(loop.map((span, i) => ({ span, width: widths[i % widths.length] ?? 0 })));

describe('what is clear of a border', () => {
  test('of a rectangle 20 × 12, all sides by 1.5', () => {
    expect(areaLeft([pushed(rectangle(0, 0, 20, 12), 1.5)])).toBeCloseTo(17 * 9, 6);
  });

  test('each side by its own width', () => {
    // Below 1, right 2, above 3, left 0: no side reaches round its corners into the others' strips.
    expect(areaLeft([pushed(rectangle(0, 0, 20, 12), 1, 2, 3, 0)])).toBeCloseTo(
      // The side that stays loses what lies within 1 and 3 of its two corners, which the strips below and above hold.
      18 * 8,
      6,
    );
  });

  test('an inner corner of 90° keeps its round: a plate with a notch of 5 × 4', () => {
    const notched = polygon([
      [0, 0],
      [20, 0],
      [20, 12],
      [15, 12],
      [15, 8],
      [10, 8],
      [10, 12],
      [0, 12],
    ]);
    // Inside offset of 2: the plate's rectangle less the notch grown by 2 with rounds below.
    const notch = (5 + 4) * (4 - 2) + (5 * 2 + HALF * 4);
    expect(areaLeft([pushed(notched, 2)])).toBeCloseTo(16 * 8 - notch, 6);
  });

  test('of a disc of 6 by 2 is one of 4; by 7 nothing', () => {
    expect(areaLeft([pushed(circle(1, 2, 6), 2)])).toBeCloseTo(16 * Math.PI, 6);
    expect(areaLeft([pushed(circle(1, 2, 6), 7)])).toBe(0);
  });

  test('of a hole the other way round: it grows', () => {
    const plate = rectangle(-20, -20, 20, 20);
    expect(areaLeft([pushed(reverseSpans(circle(1, 2, 6)), 2)], [plate])).toBeCloseTo(1600 - 64 * Math.PI, 6);
  });

  test('a border with width 0 stays the very same', () => {
    const loop = rectangle(0, 0, 20, 12);
    expect(pushed(loop, 0)).toEqual({ chains: [loop], carriers: loop });
  });

  test('the curves that borders are made of are exact, those that decide are a nudge farther', () => {
    const { chains, carriers } = pushed(rectangle(0, 0, 20, 12), 1.5);
    const near = (y: number) => [expect.closeTo(y, 12), expect.closeTo(y, 12)];
    expect([carriers[0]?.start.y, carriers[0]?.end.y]).toEqual(near(1.5));
    expect([chains[0]?.[0]?.start.y, chains[0]?.[0]?.end.y]).toEqual(near(1.500_15));
  });
});

describe('a border that stands alone', () => {
  const plate = rectangle(-20, -20, 20, 20);

  test('takes its left strip and a disc at both ends: 6 × 2 + 2 · 4 π less two quarters', () => {
    const alone = pushAlone({ span: lineSpan({ x: -3, y: 1 }, { x: 3, y: 1 }), width: 2 });
    expect(areaLeft([alone], [plate])).toBeCloseTo(1600 - (12 + 6 * Math.PI), 6);
    // On its left, y up to 3, not on its right.
    const middle = { x: 0, y: 3 };
    expect(Math.min(...alone.carriers.map((span) => distanceToSpan(span, middle)))).toBeCloseTo(0, 12);
    expect(Math.min(...alone.carriers.map((span) => distanceToSpan(span, { x: 0, y: -1 })))).toBeGreaterThan(
      1,
    );
  });

  test('an arc bent round less than the width takes nothing beside the discs at its ends', () => {
    // Radius 1 under a width of 2: discs of 2 about ends 2 apart hold the half disc; less the lens they share.
    const arc = arcSpan({ center: { x: 0, y: 0 }, radius: 1, from: 0, sweep: Math.PI });
    const lens = 8 * Math.acos(0.5) - Math.sqrt(12);
    expect(areaLeft([pushAlone({ span: arc, width: 2 })], [plate])).toBeCloseTo(1600 - 8 * Math.PI + lens, 6);
  });
});

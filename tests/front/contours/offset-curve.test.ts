/** M2 a border's features are offset, and where they cut each other: on 3-4-5 triangles. Curves nearer than 0.00001 mm touch. */
import { describe, expect, test } from 'vitest';
import {
  cutWhereTheyMeet,
  type OffsetCurve,
  offsetFeature,
  pointOfCurve,
  shareOfArc,
} from '#front/contours/offset-curve.ts';
import { loopFeatures } from '#front/front-features.ts';
import { arcSpan, type Loop, lineSpan, reverseSpans, type Span } from '#geometry/span.ts';
import { type Movement, moveSpan } from '#support/geometry/move-spans.ts';
import { polygon } from '#support/geometry/shapes.ts';

const near = (x: number, y: number) => [expect.closeTo(x, 9), expect.closeTo(y, 9)];

/** What spreads from one span to its right. */
function offsetCurveOf(span: Span, reach: number): OffsetCurve {
  const kind = span.kind;
  // Closed by a line back, whose own piece is left out.
  const loop: Loop = [span, lineSpan(span.end, span.start)];
  const feature = loopFeatures([loop], 0).find(
    (each) => each.kind === kind && each.ax === span.start.x && each.ay === span.start.y,
  );
  const found = feature && offsetFeature(feature, reach);
  if (found === undefined) throw new Error('the span spreads');
  return found;
}

const line = (x0: number, y0: number, x1: number, y1: number) => lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 });
/** The right half of a circle from below, or the left half from above. */
const right = (x: number, y: number, radius: number) =>
  arcSpan({ center: { x, y }, radius, from: -Math.PI / 2, sweep: Math.PI });
const left = (x: number, y: number, radius: number) =>
  arcSpan({ center: { x, y }, radius, from: Math.PI / 2, sweep: Math.PI });

/** Places at which both are cut, each checked to lie at its share. */
function cutsOf(a: OffsetCurve, b: OffsetCurve): number[][] {
  cutWhereTheyMeet(a, b);
  const placesOf = (one: OffsetCurve) => {
    const places: number[][] = [];
    for (let i = 0; i < one.cuts.length; i += 3) {
      const [share = 0, x = 0, y = 0] = one.cuts.slice(i, i + 3);
      const [onX, onY] = pointOfCurve(one, share);
      expect(Math.hypot(onX - x, onY - y)).toBeLessThan(4e-5);
      places.push([x, y]);
    }
    return places;
  };
  const places = placesOf(a);
  placesOf(b);
  return places;
}

describe('an offset feature', () => {
  test('a line moves to its right, square to itself', () => {
    const { ax, ay, bx, by, radius } = offsetCurveOf(line(1, 2, 7, 10), 5);
    expect([ax, ay]).toEqual(near(5, -1));
    expect([bx, by]).toEqual(near(11, 7));
    expect(radius).toBe(0);
  });

  test('an arc that turns left widens, one that turns right narrows and is gone at its centre', () => {
    const { radius, ay, by } = offsetCurveOf(right(3, 4, 5), 2);
    expect([radius, ay, by]).toEqual([7, expect.closeTo(-3, 9), expect.closeTo(11, 9)]);
    const inner = reverseSpans([right(3, 4, 5)])[0];
    if (inner === undefined) throw new Error('one span');
    expect(offsetCurveOf(inner, 2).radius).toBe(3);
    expect(() => offsetCurveOf(inner, 5)).toThrow('the span spreads');
  });

  test('a corner that turns away spreads into an arc round it, from one normal to the next', () => {
    // Left at (4, 1), from along x to along (3, 4): normals (0, −1) and (0.8, −0.6).
    const loop = polygon([
      [0, 1],
      [4, 1],
      [7, 5],
      [-3, 9],
    ]);
    const corner = loopFeatures([loop], 0).find(
      ({ kind, cx, cy }) => kind === 'corner' && cx === 4 && cy === 1,
    );
    const found = corner && offsetFeature(corner, 5);
    expect(found?.radius).toBe(5);
    expect([found?.ax, found?.ay]).toEqual(near(4, -4));
    expect([found?.bx, found?.by]).toEqual(near(8, -2));
    expect(corner && offsetFeature(corner, 0)).toBeUndefined();
  });

  test('an arc keeps its angles', () => {
    // From (6, 8) − (0, 0) · 10 a quarter on.
    const arc = arcSpan({ center: { x: 1, y: 2 }, radius: 10, from: Math.atan2(8, 6), sweep: Math.PI / 2 });
    const { ax, ay, bx, by } = offsetCurveOf(arc, 5);
    expect([ax, ay]).toEqual(near(1 + 9, 2 + 12));
    expect([bx, by]).toEqual(near(1 - 12, 2 + 9));
  });

  test('its box holds its bow', () => {
    const { minX, maxX, minY, maxY } = offsetCurveOf(right(3, 4, 5), 2);
    expect(minX).toBeLessThanOrEqual(3);
    expect(maxX).toBeGreaterThanOrEqual(10);
    expect(minY).toBeLessThanOrEqual(-3);
    expect(maxY).toBeGreaterThanOrEqual(11);
  });

  test('shares of an arc run with it, and are -1 beyond its ends', () => {
    const arc = offsetCurveOf(right(3, 4, 5), 2);
    expect(shareOfArc(arc, 3 + 7 * Math.cos(Math.PI / 4), 4 + 7 * Math.sin(Math.PI / 4))).toBeCloseTo(
      0.75,
      12,
    );
    expect(shareOfArc(arc, -4, 4)).toBe(-1);
    expect(pointOfCurve(arc, 0.25)).toEqual(near(3 + 7 * Math.SQRT1_2, 4 - 7 * Math.SQRT1_2));
    expect(pointOfCurve(arc, 0.5)).toEqual(near(10, 4));
    expect(pointOfCurve(offsetCurveOf(line(1, 2, 7, 10), 5), 0.25)).toEqual(near(6.5, 1));
  });
});

const STILL: Movement = { turn: 0, factor: 1, mirrored: false, shift: { x: 0, y: 0 } };
const TURNED: Movement = { turn: 0.43, factor: 1, mirrored: false, shift: { x: -17, y: 31 } };

describe.each([
  ['as drawn', STILL],
  ['turned by an odd angle and moved', TURNED],
])('where two offset features cut each other, %s', (_, movement) => {
  const curve = (span: Span, reach: number) => offsetCurveOf(moveSpan(span, movement), reach);
  /** Places in the frame that they are drawn in. */
  const cuts = (a: OffsetCurve, b: OffsetCurve) => {
    const { turn, shift } = movement;
    return cutsOf(a, b)
      .map(([x = 0, y = 0]) => [x - shift.x, y - shift.y])
      .map(([x = 0, y = 0]) => [
        x * Math.cos(turn) + y * Math.sin(turn),
        y * Math.cos(turn) - x * Math.sin(turn),
      ])
      .sort((p, q) => (p[1] ?? 0) - (q[1] ?? 0));
  };

  test('lines cross', () => {
    expect(cuts(curve(line(0, 3, 10, 3), 1), curve(line(4, 9, 4, -9), 2))).toEqual([near(2, 2)]);
    expect(cuts(curve(line(0, 3, 10, 3), 1), curve(line(4, 9, 4, 3), 2))).toEqual([]);
    expect(cuts(curve(line(0, 3, 10, 3), 1), curve(line(0, 5, 10, 5), 2))).toEqual([]);
  });

  test('a line cuts an arc of 5 at 3 from its centre twice, either way given', () => {
    expect(cuts(curve(line(8, 20, 8, -20), 2), curve(right(3, 1, 4), 1))).toEqual([near(6, -3), near(6, 5)]);
    expect(cuts(curve(right(3, 1, 4), 1), curve(line(8, 20, 8, -20), 2))).toEqual([near(6, -3), near(6, 5)]);
    expect(cuts(curve(line(8, 20, 8, 2), 2), curve(right(3, 1, 4), 1))).toEqual([near(6, 5)]);
  });

  test('a line that misses an arc by 0.000008 mm touches it, by 0.00002 not', () => {
    const places = cuts(curve(line(10.000_008, 20, 10.000_008, -20), 2), curve(right(3, 1, 4), 1));
    expect(places.length).toBeGreaterThan(0);
    for (const place of places) expect(place).toEqual(near(8.000_008, 1));
    expect(cuts(curve(line(10.000_02, 20, 10.000_02, -20), 2), curve(right(3, 1, 4), 1))).toEqual([]);
  });

  test('arcs of 13 and 15 with centres 14 apart cross at 5 from the first', () => {
    expect(cuts(curve(right(1, 2, 10), 3), curve(left(15, 2, 12), 3))).toEqual([near(6, -10), near(6, 14)]);
    expect(cuts(curve(right(1, 2, 10), 3), curve(left(40, 2, 12), 3))).toEqual([]);
  });

  test('arcs that miss each other by 0.000008 mm touch, by 0.00002 not', () => {
    const [first, second] = [curve(right(0, 1, 4), 1), curve(left(8.000_008, 1, 2), 1)];
    const places = cuts(first, second);
    expect(places.length).toBeGreaterThan(0);
    for (const place of places) expect(place).toEqual([expect.closeTo(5, 4), expect.closeTo(1, 9)]);
    expect(second.cuts).toHaveLength(first.cuts.length);
    expect(cuts(curve(right(0, 1, 4), 1), curve(left(8.000_02, 1, 2), 1))).toEqual([]);
  });

  test('so do arcs one inside the other; round one centre they run along each other', () => {
    expect(cuts(curve(right(0, 1, 4), 1), curve(right(1.999_992, 1, 2), 1)).length).toBeGreaterThan(0);
    expect(cuts(curve(right(0, 1, 4), 1), curve(right(1.999_98, 1, 2), 1))).toEqual([]);
    expect(cuts(curve(right(0, 1, 4), 1), curve(right(0.000_005, 1, 4), 1))).toEqual([]);
  });

  test('an end within 0.00001 mm of the other cuts it, at its own ends it does not', () => {
    // From (2, 2.000008) up: it ends a hair above the line at y = 2.
    const across = curve(line(4, 9, 4, 2.000_008), 2);
    const level = curve(line(0, 3, 10, 3), 1);
    expect(cuts(level, across)).toEqual([[expect.closeTo(2, 9), expect.closeTo(2, 9)]]);
    expect(across.cuts).toEqual([]);
    expect(cuts(curve(line(0, 3, 10, 3), 1), curve(line(4, 9, 4, 2.000_02), 2))).toEqual([]);
    // Corner on corner.
    expect(cuts(curve(line(0, 3, 2, 3), 1), curve(line(4, 9, 4, 2.000_008), 2))).toEqual([]);
  });

  test('an end that touches an arc cuts it there', () => {
    // The line ends at (6, 5.000004), on the circle of 5 about (3, 1) as far as can be reported.
    const arc = curve(right(3, 1, 4), 1);
    expect(cuts(arc, curve(line(8, 20, 8, 5.000_004), 2))).toEqual([
      [expect.closeTo(6, 4), expect.closeTo(5, 4)],
    ]);
    expect(cuts(curve(right(3, 1, 4), 1), curve(line(8, 20, 8, 5.000_04), 2))).toEqual([]);
  });
});

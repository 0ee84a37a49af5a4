/** Lines and arcs by closed forms: circle segments, chords and bulges by school geometry. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  arcSpan,
  bulgeOf,
  distanceToSpan,
  lineSpan,
  loopArea,
  loopsArea,
  nearestShare,
  pointAlong,
  reverseSpan,
  reverseSpans,
  spanFromBulge,
  spanLength,
  spansLength,
  startAngle,
  tangentAlong,
} from '#geometry/span.ts';
import { rectangle } from '#support/geometry/shapes.ts';

const near = (x: number, y: number) => ({ x: expect.closeTo(x, 12), y: expect.closeTo(y, 12) });
const ROOT3 = Math.sqrt(3);
/** From 30° by 120° to the left about (2, −1), radius 6. */
const arc = arcSpan({ center: { x: 2, y: -1 }, radius: 6, from: Math.PI / 6, sweep: (2 * Math.PI) / 3 });
const line = lineSpan({ x: 1, y: 2 }, { x: 7, y: 10 });

describe('an arc from 30° by 120°, radius 6 about (2, −1)', () => {
  test('runs from (2 + 3√3, 2) to (2 − 3√3, 2) over the top', () => {
    expect(arc.start).toEqual(near(2 + 3 * ROOT3, 2));
    expect(arc.end).toEqual(near(2 - 3 * ROOT3, 2));
    expect(pointAlong(arc, 0.5)).toEqual(near(2, 5));
    expect(pointAlong(arc, 0.25)).toEqual(near(5, -1 + 3 * ROOT3));
    expect(startAngle(arc)).toBeCloseTo(Math.PI / 6, 12);
    expect(spanLength(arc)).toBeCloseTo(4 * Math.PI, 12);
  });

  test('travels square to its radius, to the other side when reversed', () => {
    expect(tangentAlong(arc, 0)).toEqual(near(-0.5, ROOT3 / 2));
    expect(tangentAlong(arc, 0.5)).toEqual(near(-1, 0));
    expect(tangentAlong(reverseSpan(arc), 0.5)).toEqual(near(1, 0));
    expect(tangentAlong(reverseSpan(arc), 0)).toEqual(near(0.5, ROOT3 / 2));
  });

  test('is nearest at the same angle, or at the nearer end', () => {
    // 60° from the centre: a quarter of the way.
    expect(nearestShare(arc, { x: 7, y: -1 + 5 * ROOT3 })).toBeCloseTo(0.25, 12);
    expect(nearestShare(arc, { x: 2.5, y: -1 + 0.5 * ROOT3 })).toBeCloseTo(0.25, 12);
    expect(nearestShare(reverseSpan(arc), { x: 7, y: -1 + 5 * ROOT3 })).toBeCloseTo(0.75, 12);
    expect(nearestShare(arc, { x: 3, y: -9 })).toBe(0);
    expect(nearestShare(arc, { x: 1, y: -9 })).toBe(1);
    expect(distanceToSpan(arc, { x: 7, y: -1 + 5 * ROOT3 })).toBeCloseTo(4, 12);
    expect(distanceToSpan(arc, { x: 2, y: 1 })).toBeCloseTo(4, 12);
  });

  test('has the bulge tan 30°, negative run backwards', () => {
    expect(bulgeOf(arc)).toBeCloseTo(1 / ROOT3, 12);
    expect(bulgeOf(reverseSpan(arc))).toBeCloseTo(-1 / ROOT3, 12);
    expect(bulgeOf(line)).toBe(0);
  });
});

describe('a line from (1, 2) to (7, 10)', () => {
  test('is 10 long in the direction (0.6, 0.8)', () => {
    expect(spanLength(line)).toBe(10);
    expect(tangentAlong(line, 0.3)).toEqual(near(0.6, 0.8));
    expect(pointAlong(line, 0.25)).toEqual({ x: 2.5, y: 4 });
  });

  test('is nearest at the foot, held at its ends', () => {
    // 2.5 along and 5 to the left.
    const beside = { x: 1 + 1.5 - 4, y: 2 + 2 + 3 };
    expect(nearestShare(line, beside)).toBeCloseTo(0.25, 12);
    expect(distanceToSpan(line, beside)).toBeCloseTo(5, 12);
    expect(nearestShare(line, { x: 0, y: -3 })).toBe(0);
    expect(nearestShare(line, { x: 8, y: 15 })).toBe(1);
    expect(distanceToSpan(line, { x: 8, y: 15 })).toBeCloseTo(Math.sqrt(26), 12);
  });
});

describe('an arc by its bulge', () => {
  test('bulge 0.5 over a chord of 8: sagitta 2, radius 5, to the right of the way', () => {
    // Sagitta = bulge · chord / 2; radius = (chord² / 4 + sagitta²) / (2 · sagitta).
    const bulged = spanFromBulge({ x: 1, y: 3 }, { x: 9, y: 3 }, 0.5);
    expect(bulged).toMatchObject({ kind: 'arc', center: near(5, 6), radius: expect.closeTo(5, 12) });
    expect(pointAlong(bulged, 0.5)).toEqual(near(5, 1));
    expect(pointAlong(spanFromBulge({ x: 1, y: 3 }, { x: 9, y: 3 }, -0.5), 0.5)).toEqual(near(5, 5));
  });

  test('0 is a line, 1 a half circle', () => {
    expect(spanFromBulge({ x: 1, y: 3 }, { x: 9, y: 3 }, 0).kind).toBe('line');
    expect(spanFromBulge({ x: 1, y: 3 }, { x: 1, y: 9 }, 1)).toMatchObject({
      center: near(1, 6),
      radius: 3,
      sweep: expect.closeTo(Math.PI, 12),
    });
  });

  test('any bulge comes back', () => {
    const at = fc.integer({ min: -900, max: 900 }).map((each) => each / 7);
    const bulge = fc.integer({ min: -99, max: 99 }).map((each) => each / 99);
    fc.assert(
      fc.property(at, at, fc.integer({ min: 1, max: 50 }), bulge, (x, y, length, given) => {
        const span = spanFromBulge({ x, y }, { x: x + length, y: y - length / 3 }, given);
        expect(bulgeOf(span)).toBeCloseTo(given, 9);
        expect(distanceToSpan(span, pointAlong(span, 1))).toBeLessThan(1e-9);
        expect(
          Math.hypot(pointAlong(span, 1).x - span.end.x, pointAlong(span, 1).y - span.end.y),
        ).toBeLessThan(1e-9);
      }),
    );
  });
});

describe('areas', () => {
  test('a circle segment under the arc: r² (θ − sin θ) / 2, negative the other way round', () => {
    const segment = [arc, lineSpan(arc.end, arc.start)];
    const area = 18 * ((2 * Math.PI) / 3 - ROOT3 / 2);
    expect(loopArea(segment)).toBeCloseTo(area, 10);
    expect(loopArea(reverseSpans(segment))).toBeCloseTo(-area, 10);
    expect(spansLength(segment)).toBeCloseTo(4 * Math.PI + 6 * ROOT3, 12);
  });

  test('a plate with a hole, also far out', () => {
    const loops = (x: number, y: number) => [
      rectangle(x, y, x + 7, y + 5),
      reverseSpans(rectangle(x + 1, y + 1, x + 3, y + 4)),
    ];
    expect(loopsArea(loops(0, 0))).toBe(29);
    expect(loopsArea(loops(4e6, -3e6))).toBeCloseTo(29, 9);
    expect(loopArea([])).toBe(0);
  });

  test('a chain reversed begins where it ended', () => {
    const chain = [line, lineSpan(line.end, { x: 0, y: 11 })];
    expect(reverseSpans(chain)).toEqual([
      lineSpan({ x: 0, y: 11 }, { x: 7, y: 10 }),
      lineSpan({ x: 7, y: 10 }, { x: 1, y: 2 }),
    ]);
  });
});

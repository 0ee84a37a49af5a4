/** Meetings of lines and arcs on 3-4-5 triangles. Places nearer than 0.00005 mm are one (docs/method.md, M1). */
import { describe, expect, test } from 'vitest';
import { arcSpan, lineSpan, pointAlong, reverseSpan, type Span } from '#geometry/span.ts';
import { meetSpans } from '#geometry/spans/meet-spans.ts';

const line = (x0: number, y0: number, x1: number, y1: number) => lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 });
const arc = (x: number, y: number, radius: number, [from, sweep]: [number, number]) =>
  arcSpan({ center: { x, y }, radius, from, sweep });
const near = (x: number, y: number) => ({ x: expect.closeTo(x, 9), y: expect.closeTo(y, 9) });

/** Every meeting lies on both spans at its shares. */
function meetings(a: Span, b: Span) {
  const found = meetSpans(a, b);
  for (const { point, shareA, shareB } of found) {
    for (const at of [pointAlong(a, shareA), pointAlong(b, shareB)]) {
      expect(Math.hypot(at.x - point.x, at.y - point.y)).toBeLessThan(1.1e-4);
    }
  }
  return found.map(({ point }) => point);
}

describe('lines', () => {
  test('that cross do so at a third of one and a quarter of the other', () => {
    expect(meetSpans(line(0, 0, 9, 6), line(3, 0, 3, 8))).toEqual([
      { point: near(3, 2), shareA: expect.closeTo(1 / 3, 12), shareB: expect.closeTo(1 / 4, 12) },
    ]);
  });

  test('whose carriers cross beyond an end of either do not meet', () => {
    expect(meetings(line(0, 0, 9, 6), line(3, 2.5, 3, 8))).toEqual([]);
    expect(meetings(line(3, 2.5, 3, 8), line(0, 0, 9, 6))).toEqual([]);
    expect(meetings(line(0, 0, 9, 6), line(3, -4, 3, 1))).toEqual([]);
  });

  test('one that ends on the other, or 0.00004 mm short of it, meets it with its own end', () => {
    expect(meetSpans(line(0, 0, 10, 0), line(4, 0.000_04, 4, 5))).toEqual([
      { point: { x: 4, y: 0.000_04 }, shareA: expect.closeTo(0.4, 12), shareB: 0 },
    ]);
    expect(meetSpans(line(4, 5, 4, 0), line(0, 0, 10, 0))).toEqual([
      { point: { x: 4, y: 0 }, shareA: 1, shareB: expect.closeTo(0.4, 12) },
    ]);
    expect(meetings(line(0, 0, 10, 0), line(4, 0.000_06, 4, 5))).toEqual([]);
  });

  test('that share an end meet there once', () => {
    expect(meetSpans(line(0, 0, 10, 0), line(10, 0, 12, 7))).toEqual([
      { point: { x: 10, y: 0 }, shareA: 1, shareB: 0 },
    ]);
  });

  test('that overlap meet at the ends of the overlap', () => {
    expect(meetSpans(line(0, 0, 10, 0), line(7, 0, 15, 0))).toEqual([
      { point: { x: 10, y: 0 }, shareA: 1, shareB: expect.closeTo(0.375, 12) },
      { point: { x: 7, y: 0 }, shareA: expect.closeTo(0.7, 12), shareB: 0 },
    ]);
    expect(meetings(line(0, 0, 10, 0), line(2, 0, 5, 0))).toEqual([near(2, 0), near(5, 0)]);
    expect(meetings(line(0, 0, 10, 0), line(2, 0.001, 5, 0.001))).toEqual([]);
  });
});

describe('a line and an arc of radius 5 about (7, 2)', () => {
  const upper = arc(7, 2, 5, [0, Math.PI]);

  test('cross 4 to either side of the foot', () => {
    expect(meetings(line(0, 5, 20, 5), upper)).toEqual([near(3, 5), near(11, 5)]);
    expect(meetings(upper, line(0, 5, 20, 5))).toEqual([near(3, 5), near(11, 5)]);
    expect(meetings(line(0, 5, 8, 5), upper)).toEqual([near(3, 5)]);
    expect(meetings(line(0, 5, 20, 5), arc(7, 2, 5, [0, 1]))).toEqual([near(11, 5)]);
    expect(meetings(line(0, -1, 20, -1), upper)).toEqual([]);
  });

  test.each([7, 7.000_04, 6.999_96])('touch once at y = %d', (y) => {
    expect(meetings(line(0, y, 20, y), upper)).toEqual([near(7, y)]);
  });

  test('miss each other by 0.0001 mm', () => {
    expect(meetings(line(0, 7.0001, 20, 7.0001), upper)).toEqual([]);
  });

  test('a fillet that runs into the line meets it at their common end and nowhere else', () => {
    const fillet = arc(7, 2, 5, [-Math.PI / 2, 1.4]);
    expect(meetings(line(0, -3, 7, -3), fillet)).toEqual([near(7, -3)]);
    // Also where its figures were rounded and the line runs 0.00003 mm inside.
    expect(meetings(line(0, -2.999_97, 7.000_01, -2.999_97), fillet)).toHaveLength(1);
  });
});

describe('arcs', () => {
  test('of 13 and 15 about centres 14 apart cross at (6, −10) and (6, 14)', () => {
    const [a, b] = [arc(1, 2, 13, [-2, 3.1]), arc(15, 2, 15, [1.8, 3])];
    expect(meetings(a, b)).toEqual([near(6, -10)]);
    expect(meetings(arc(1, 2, 13, [0.5, 1.2]), reverseSpan(arc(15, 2, 15, [1.5, 1])))).toEqual([near(6, 14)]);
  });

  test('touch from outside and from inside, once', () => {
    expect(meetings(arc(0, 0, 5, [-1, 2]), arc(8, 0, 3, [2, 2.5]))).toEqual([near(5, 0)]);
    expect(meetings(arc(0, 0, 5, [-1, 2]), arc(2, 0, 3, [-0.7, 2]))).toEqual([near(5, 0)]);
    expect(meetings(arc(2, 0, 3, [-0.7, 2]), arc(0, 0, 5, [-1, 2]))).toEqual([near(5, 0)]);
    expect(meetings(arc(0, 0, 5, [-1, 2]), arc(8.0002, 0, 3, [2, 2.5]))).toEqual([]);
  });

  test('of one circle meet at the ends of their overlap', () => {
    const points = meetings(arc(0, 0, 5, [0, 2]), arc(0, 0, 5, [1.5, 1.1]));
    expect(points).toEqual([
      near(5 * Math.cos(2), 5 * Math.sin(2)),
      near(5 * Math.cos(1.5), 5 * Math.sin(1.5)),
    ]);
  });
});

describe('curves that share an end', () => {
  const upper = arc(7, 2, 5, [0, Math.PI]);

  test('a chord from a point of an arc meets it there and at its other end', () => {
    const chord = line(3, 5, 20, 5);
    expect(meetings(chord, upper)).toEqual([near(3, 5), near(11, 5)]);
    expect(meetings(upper, chord)).toEqual([near(3, 5), near(11, 5)]);
    expect(meetings(reverseSpan(chord), reverseSpan(upper))).toEqual([near(3, 5), near(11, 5)]);
  });

  test('arcs of 13 and 15 that begin at one crossing of their circles meet at the other as well', () => {
    const [a, b] = [
      arc(1, 2, 13, [-Math.atan2(12, 5), 2.8]),
      arc(15, 2, 15, [Math.atan2(12, 9) - Math.PI, -2.1]),
    ];
    expect(meetings(a, b)).toEqual([near(6, -10), near(6, 14)]);
    expect(meetings(b, a)).toEqual([near(6, -10), near(6, 14)]);
  });
});

describe('two curves that stay nearer than 0.00005 mm meet once, others at each crossing', () => {
  // R 5 about (7, 2) sinks below y = −3 + s between 7 ± √(10 s).
  const level = (short: number) => line(0, -3 + short, 20, -3 + short);
  const from = (before: number) => arc(7, 2, 5, [-Math.PI / 2 - before / 5, 1.4]);

  test('a fillet that ends 0.00003 mm beside a line that goes on', () => {
    expect(meetings(level(0.000_03), from(0))).toEqual([near(7, -3)]);
    expect(meetings(from(0), level(0.000_03))).toHaveLength(1);
  });

  test('an arc that starts 0.00004 mm from the line, is 0.00006 mm beyond it and comes back', () => {
    expect(meetings(from(0.015), level(0.000_06)).map(({ x }) => x)).toEqual([
      expect.closeTo(7 - 0.015, 6),
      expect.closeTo(7 + Math.sqrt(10 * 0.000_06), 6),
    ]);
    expect(meetings(level(0.000_06), from(0.015))).toHaveLength(2);
  });

  // R 4 inside R 5, sticking out by s at the right: they cross at heights of ± √(2 s / (1 / 4 − 1 / 5)).
  const outer = (low: number) => arc(2, 3, 5, [Math.asin(low / 5), 1]);
  const inner = (low: number, out: number) => arc(3 + out, 3, 4, [Math.asin(low / 4), 1]);

  test('an arc inside another, sticking out by 0.00003 mm where both begin', () => {
    expect(meetings(outer(0), inner(0, 0.000_03))).toHaveLength(1);
    expect(meetings(inner(0, 0.000_03), outer(0))).toHaveLength(1);
  });

  test('by 0.00008 mm, from beside where both begin: they cross once more', () => {
    for (const found of [
      meetings(outer(-0.05), inner(-0.05, 0.000_08)),
      meetings(inner(-0.05, 0.000_08), outer(-0.05)),
    ]) {
      expect(found.map(({ y }) => y)).toEqual([
        expect.closeTo(3 - 0.05, 4),
        expect.closeTo(3 + Math.sqrt(40 * 0.000_08), 3),
      ]);
    }
  });
});

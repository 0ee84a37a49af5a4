/** Carriers: feet, crossings and fits by hand; the limits are those of docs/method.md and the grid of 0.0001 mm. */
import { describe, expect, test } from 'vitest';
import { pointOnCircle } from '#geometry/point.ts';
import { arcSpan, lineSpan } from '#geometry/span.ts';
import {
  crossCarriers,
  doesFit,
  fittedCarrier,
  footOn,
  misfit,
  sameCarrier,
} from '#geometry/spans/carrier.ts';

const near = (x: number, y: number) => ({ x: expect.closeTo(x, 12), y: expect.closeTo(y, 12) });
const line = (x0: number, y0: number, x1: number, y1: number) => lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 });
const arc = (x: number, y: number, radius: number, [from, sweep]: [number, number] = [0, 2]) =>
  arcSpan({ center: { x, y }, radius, from, sweep });

describe('the nearest point of the whole line or circle', () => {
  test('also beyond the span', () => {
    expect(footOn(line(0, 0, 3, 4), { x: 10, y: 5 })).toEqual(near(6, 8));
    expect(footOn(arc(1, 2, 5), { x: 1 - 6, y: 2 - 8 })).toEqual(near(-2, -2));
    expect(footOn(arc(1, 2, 5), { x: 1.3, y: 2.4 })).toEqual(near(4, 6));
  });
});

describe('one carrier', () => {
  test('lines that run along each other either way, not parallels 0.00002 apart', () => {
    expect(sameCarrier(line(0, 0, 6, 8), line(30, 40, 15, 20))).toBe(true);
    expect(sameCarrier(line(0, 0, 6, 0), line(9, 0.000_02, 7, 0.000_02))).toBe(false);
    expect(sameCarrier(line(0, 0, 6, 0), line(9, 0.000_005, 7, 0.000_005))).toBe(true);
    expect(sameCarrier(line(0, 0, 6, 0), line(7, 0, 9, 0.01))).toBe(false);
    expect(sameCarrier(line(0, 0, 6, 0), line(7, 0.01, 9, 0))).toBe(false);
  });

  test('arcs of one centre and one radius', () => {
    expect(sameCarrier(arc(1, 2, 5), arc(1, 2, 5, [3, -1]))).toBe(true);
    expect(sameCarrier(arc(1, 2, 5), arc(1, 2, 5.000_02))).toBe(false);
    expect(sameCarrier(arc(1, 2, 5), arc(1, 2.000_02, 5))).toBe(false);
    expect(sameCarrier(arc(1, 2, 5), line(1, 7, 2, 7))).toBe(false);
    expect(sameCarrier(line(1, 7, 2, 7), arc(1, 2, 5))).toBe(false);
  });
});

describe('the crossing nearest to a place', () => {
  test('of a line and a circle of 5, either way given', () => {
    const [level, round] = [line(0, 5, 1, 5), arc(7, 2, 5)];
    expect(crossCarriers(level, round, { x: 4, y: 6 })).toEqual(near(3, 5));
    expect(crossCarriers(round, level, { x: 10, y: 6 })).toEqual(near(11, 5));
  });

  test('of two circles', () => {
    expect(crossCarriers(arc(1, 2, 13), arc(15, 2, 15), { x: 9, y: 9 })).toEqual(near(6, 14));
    expect(crossCarriers(arc(1, 2, 13), arc(15, 2, 15), { x: 9, y: -9 })).toEqual(near(6, -10));
  });

  test('of two lines; parallels have none', () => {
    expect(crossCarriers(line(0, 0, 2, 1), line(9, 0, 9, 1), { x: 0, y: 0 })).toEqual(near(9, 4.5));
    expect(crossCarriers(line(0, 0, 2, 1), line(9, 0, 11, 1), { x: 0, y: 0 })).toBeUndefined();
  });

  test('a miss by 0.000005 mm touches at the foot, one by 0.00002 does not', () => {
    expect(crossCarriers(line(0, 7.000_005, 1, 7.000_005), arc(3, 2, 5), { x: 3, y: 7 })).toEqual(
      near(3, 7.000_005),
    );
    expect(crossCarriers(line(0, 7.000_02, 1, 7.000_02), arc(3, 2, 5), { x: 3, y: 7 })).toBeUndefined();
    // Outside: centres 8 and a hair apart, radii 5 and 3. Inside: 2 less a hair.
    expect(crossCarriers(arc(0, 0, 5), arc(8.000_005, 0, 3), { x: 5, y: 0 })).toEqual(near(5, 0));
    expect(crossCarriers(arc(0, 0, 5), arc(8.000_02, 0, 3), { x: 5, y: 0 })).toBeUndefined();
    expect(crossCarriers(arc(0, 0, 5), arc(1.999_995, 0, 3), { x: 5, y: 0 })).toEqual(near(5, 0));
    expect(crossCarriers(arc(0, 0, 5), arc(1.999_95, 0, 3), { x: 5, y: 0 })).toBeUndefined();
  });

  test('of circles round one centre there is none', () => {
    expect(crossCarriers(arc(0, 0, 5), arc(0, 0, 3), { x: 5, y: 0 })).toBeUndefined();
  });
});

describe('how an edge of the grid fits', () => {
  const level = fittedCarrier(line(0, 0, 20, 0));

  test('a line: by its farther end, no farther than 0.00045 off', () => {
    expect(misfit(level, { x: 3, y: 0.0001 }, { x: 5, y: -0.0003 })).toBeCloseTo(0.0003, 9);
    expect(misfit(level, { x: 3, y: -0.0002 }, { x: 5, y: 0 })).toBeCloseTo(0.0002, 9);
    expect(misfit(level, { x: 3, y: 0 }, { x: 5, y: 0.0005 })).toBeUndefined();
    expect(misfit(level, { x: 3, y: 0.0005 }, { x: 5, y: 0 })).toBeUndefined();
  });

  test('past its end by up to 0.05 mm, and so much worse', () => {
    expect(misfit(level, { x: 20, y: 0 }, { x: 20.08, y: 0 })).toBeCloseTo(0.04, 9);
    expect(misfit(level, { x: 20, y: 0 }, { x: 20.12, y: 0 })).toBeUndefined();
    expect(misfit(level, { x: -0.06, y: 0 }, { x: 0, y: 0 })).toBeCloseTo(0.03, 9);
  });

  test('a circle: chords inside it by their sagitta, not outside', () => {
    const round = fittedCarrier(arc(2, 1, 10, [0, 3]));
    // A chord over 0.02 rad, its middle 10 (1 − cos 0.01) = 0.0005 inside.
    const [a, b] = [0.5, 0.52].map((angle) => pointOnCircle({ x: 2, y: 1 }, 10, angle));
    if (a === undefined || b === undefined) throw new Error('two points');
    expect(misfit(round, a, b)).toBeCloseTo(0, 9);
    const inside = (point: { x: number; y: number }, by: number) => ({
      x: 2 + (point.x - 2) * (1 - by / 10),
      y: 1 + (point.y - 1) * (1 - by / 10),
    });
    // Both ends' distances add up.
    expect(misfit(round, inside(a, 0.0006), inside(b, 0.0011))).toBeCloseTo(0.0017, 6);
    expect(misfit(round, inside(a, -0.0006), b)).toBeUndefined();
    expect(misfit(round, a, inside(b, -0.0006))).toBeUndefined();
    // A chord of 0.2 rad bows 0.05 mm: no chord of this circle.
    expect(misfit(round, a, pointOnCircle({ x: 2, y: 1 }, 10, 0.7))).toBeUndefined();
  });

  test('better than a limit, or not: whether it is measured or only judged', () => {
    const circle = { x: 2, y: 1 };
    for (const [span, at] of [
      [line(-3, 2, 17, 9), (share: number) => ({ x: -3 + 20 * share, y: 2 + 7 * share })],
      [arc(2, 1, 10, [0.3, 2.6]), (share: number) => pointOnCircle(circle, 10, 0.3 + 2.6 * share)],
      [arc(2, 1, 10, [0.3, -2.6]), (share: number) => pointOnCircle(circle, 10, 0.3 - 2.6 * share)],
    ] as const) {
      const carrier = fittedCarrier(span);
      for (const share of [-0.003, -0.001, 0, 0.0004, 0.31, 0.9991, 1, 1.002]) {
        for (const off of [0, 0.0001, 0.0003, 0.0006]) {
          const [from, to] = [at(share), at(share + 0.0007)];
          const [a, b] = [
            { x: from.x + off, y: from.y },
            { x: to.x, y: to.y - off / 3 },
          ];
          const measured = misfit(carrier, a, b);
          for (const limit of [0.00035, 0.0002]) {
            expect(doesFit(carrier, a, b, limit)).toBe(measured !== undefined && measured < limit);
          }
        }
      }
    }
    expect(misfit(level, { x: 3, y: 0.0001 }, { x: 5, y: -0.0003 }, 0.00029)).toBeUndefined();
  });
});

test('a chord and its arc have both ends in common, and no carrier', () => {
  const arc = arcSpan({
    center: { x: 7, y: 2 },
    radius: 5,
    from: Math.atan2(3, 4),
    sweep: Math.PI - 2 * Math.atan2(3, 4),
  });
  const chord = lineSpan(arc.start, arc.end);
  expect(sameCarrier(chord, arc)).toBe(false);
  expect(sameCarrier(arc, chord)).toBe(false);
});

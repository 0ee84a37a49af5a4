/** Crossings on 3-4-5 triangles. */
import { describe, expect, test } from 'vitest';
import { arcSpan, lineSpan } from '#geometry/span.ts';
import {
  chordOnWay,
  chordPlace,
  crossCircles,
  crossLineCircle,
  crossLines,
  crossWays,
  halfChord,
} from '#geometry/spans/cross-carriers.ts';

const near = (x: number, y: number) => ({ x: expect.closeTo(x, 12), y: expect.closeTo(y, 12) });
const line = (x0: number, y0: number, x1: number, y1: number) => lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 });
const round = (x: number, y: number, radius: number) =>
  arcSpan({ center: { x, y }, radius, from: 0.3, sweep: 1 });

test('a line 3 from the centre cuts 2 · 4 from a circle of 5, one 5 away touches, one beyond misses', () => {
  expect(halfChord(5, 3)).toBe(4);
  expect(halfChord(5, -3)).toBe(4);
  expect(halfChord(5, 5)).toBe(0);
  expect(halfChord(5, 5.01)).toBeUndefined();
});

test('circles of 13 and 15 whose centres are 14 apart share a chord 5 from the first', () => {
  // 13² − 5² = 15² − 9² = 12².
  expect(chordPlace(14, 13, 15)).toBe(5);
  expect(chordPlace(14, 15, 13)).toBe(9);
});

describe('lines', () => {
  test('cross, also where their spans do not reach', () => {
    expect(crossLines(line(0, 0, 2, 1), line(9, 0, 9, 1))).toEqual(near(9, 4.5));
    expect(crossLines(line(9, 0, 9, 1), line(0, 0, 2, 1))).toEqual(near(9, 4.5));
  });

  test('that run alike have no crossing; nor, if asked, have those that nearly do', () => {
    expect(crossLines(line(0, 0, 2, 1), line(5, 0, 9, 2))).toBeUndefined();
    expect(crossLines(line(0, 0, 4, 0), line(0, 1, 4, 1.25))).toEqual(near(-16, 0));
    expect(crossLines(line(0, 0, 4, 0), line(0, 1, 4, 1.25), 0.07)).toBeUndefined();
    expect(crossLines(line(0, 0, 4, 0), line(0, 1, 4, 1.25), 0.06)).toEqual(near(-16, 0));
  });
});

test('a line crosses a circle against its own direction first', () => {
  const { foot, points } = crossLineCircle(line(0, 5, 1, 5), round(7, 2, 5));
  expect(foot).toEqual(near(7, 5));
  expect(points).toEqual([near(3, 5), near(11, 5)]);
  const back = crossLineCircle(line(1, 5, 0, 5), round(7, 2, 5));
  expect(back.points).toEqual([near(11, 5), near(3, 5)]);
  const beyond = crossLineCircle(line(0, 8, 1, 8), round(7, 2, 5));
  expect(beyond).toEqual({ foot: near(7, 8), points: [] });
});

test('circles cross right of the way first', () => {
  expect(crossCircles(round(1, 2, 13), round(15, 2, 15))).toEqual([near(6, -10), near(6, 14)]);
  expect(crossCircles(round(15, 2, 15), round(1, 2, 13))).toEqual([near(6, 14), near(6, -10)]);
  expect(crossCircles(round(2, 1, 13), round(2, 15, 15))).toEqual([near(14, 6), near(-10, 6)]);
  expect(crossCircles(round(0, 0, 3), round(9, 0, 5))).toEqual([]);
});

test('ways cross so many of their own lengths along each', () => {
  const [a, b] = [
    { x: 1, y: 2, dx: 3, dy: 1 },
    { x: 8.5, y: 1, dx: -1, dy: 2 },
  ];
  expect(crossWays(a, b)).toEqual({ onA: 2, onB: 1.5 });
  expect(crossWays(b, a)).toEqual({ onA: 1.5, onB: 2 });
  expect(crossWays(a, { ...b, dx: -6, dy: -2 })).toBeUndefined();
});

test('a circle of 5 whose centre lies 10 along a way and 3 to its right: half a chord of 4', () => {
  const way = { x: 1, y: 2, dx: 0.6, dy: 0.8 };
  const center = { x: 1 + 6 + 2.4, y: 2 + 8 - 1.8 };
  expect(chordOnWay(way, { center, radius: 5 })).toEqual({
    foot: expect.closeTo(10, 12),
    off: expect.closeTo(3, 12),
    half: expect.closeTo(4, 12),
  });
  expect(chordOnWay(way, { center, radius: 2.9 }).half).toBeUndefined();
});

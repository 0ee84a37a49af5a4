/** Strips between parallels, against closed forms. As on the grid: `slot-outline.test.ts`. */
import { describe, expect, test } from 'vitest';
import { parallelStrip } from '#geometry/grow/parallel-strip.ts';
import { arcSpan, lineSpan, loopArea, type Span } from '#geometry/span.ts';
import { openLine } from '#support/geometry/shapes.ts';

const areaOf = (chain: readonly Span[], low: number, high: number) =>
  loopArea(parallelStrip(chain, { low, high }) ?? []);

const corner = openLine([0, 0], [30, 0], [30, 22]).spans;

test.each([
  ['on both sides', -0.75, 1.25, 52 * 2 - 1.25 ** 2 + (Math.PI / 4) * 0.75 ** 2],
  ['on the inner side alone', 0, 2, 52 * 2 - 4],
  ['on the outer side alone', -2, 0, 52 * 2 + Math.PI],
])('of a square corner, %s', (_, low, high, area) => {
  expect(areaOf(corner, low, high)).toBeCloseTo(area, 9);
  // The other way round left and right change places.
  const back = openLine([30, 22], [30, 0], [0, 0]).spans;
  expect(areaOf(back, -high, -low)).toBeCloseTo(area, 9);
});

test('of a line that runs into an arc: straight, and a piece of a ring', () => {
  const chain = [
    lineSpan({ x: -11, y: -6 }, { x: 0, y: -6 }),
    arcSpan({ center: { x: 0, y: 0 }, radius: 6, from: -Math.PI / 2, sweep: 1.9 }),
  ];
  expect(areaOf(chain, -0.5, 1)).toBeCloseTo(11 * 1.5 + 0.95 * (6.5 ** 2 - 5 ** 2), 9);
});

test('pieces of one line come out in one', () => {
  const pieces = openLine([0, 0], [7, 0], [18.5, 0], [40, 0]).spans;
  expect(parallelStrip(pieces, { low: -1, high: 0.6 })).toHaveLength(4);
});

describe('it takes the grid', () => {
  test('where the strip comes back to itself', () => {
    const hook = (gap: number) => openLine([0, 0], [30, 0], [30, gap], [0, gap]).spans;
    expect(parallelStrip(hook(2.01), { low: -1, high: 1 })).toBeUndefined();
    expect(parallelStrip(hook(2.03), { low: -1, high: 1 })).toBeDefined();
  });

  test('where it closes on itself', () => {
    const ring = openLine([0, 0], [30, 0], [30, 20], [0, 20], [0, 0.5]).spans;
    expect(parallelStrip(ring, { low: -1, high: 1 })).toBeUndefined();
  });

  test('where a strip sticks out beyond a corner that turns back', () => {
    const back = openLine([0, 0], [30, 0], [12, 24]).spans;
    expect(parallelStrip(back, { low: 0, high: 2 })).toBeUndefined();
    expect(parallelStrip(back, { low: -1.9, high: 2 })).toBeUndefined();
    expect(parallelStrip(back, { low: -2, high: 2 })).toBeDefined();
  });

  test('where a strip sticks out beyond the end of a short side', () => {
    // By 2 · sin of the corner's turn along the short side, of which 2 · tan of half the turn is cut off.
    const ending = (length: number) => openLine([0, 0], [30, 0], [30 + 0.8 * length, 0.6 * length]).spans;
    expect(parallelStrip(ending(1.19), { low: -2, high: 2 })).toBeUndefined();
    expect(parallelStrip(ending(1.21), { low: -2, high: 2 })).toBeDefined();
  });

  test('where an arc is tighter than the strip is wide', () => {
    const tight = [arcSpan({ center: { x: 3, y: 4 }, radius: 1.9, from: 0, sweep: 2.2 })];
    expect(parallelStrip(tight, { low: -2, high: 2 })).toBeUndefined();
    expect(parallelStrip(tight, { low: -2, high: 1.8 })).toBeDefined();
  });

  test('of nothing', () => {
    expect(parallelStrip([], { low: -1, high: 1 })).toBeUndefined();
  });
});

import { describe, expect, test } from 'vitest';
import { cornerArcs } from '#geometry/loops/corner-arcs.ts';
import { arcSpan, type Loop, lineSpan, spansLength } from '#geometry/span.ts';
import { circle, rectangle } from '#support/geometry/shapes.ts';

/** Places where arcs of a chain were cut: ends of its spans that were no ends before. */
function cutsOf(chain: Loop, before: Loop): { x: number; y: number }[] {
  return chain
    .map(({ end }) => end)
    .filter(({ x, y }) => before.every(({ end }) => Math.hypot(end.x - x, end.y - y) > 1e-9));
}

/** Half circles from the lowest point up: their ends are out of the way. */
const upright = (x: number, y: number, radius: number): Loop => [
  arcSpan({ center: { x, y }, radius, from: -Math.PI / 2, sweep: Math.PI }),
  arcSpan({ center: { x, y }, radius, from: Math.PI / 2, sweep: Math.PI }),
];

test('borders of straight lines alone are the very same', () => {
  const chains = [rectangle(0, 0, 3, 2), rectangle(3.001, 0, 5, 2)];
  expect(cornerArcs(chains)[0]).toBe(chains[0]);
});

describe('a circle of radius 7 about (2, 3)', () => {
  const round = upright(2, 3, 7);

  test.each([9.003, 8.998])('gets a corner at (9, 3) where a line along x = %d comes near', (x) => {
    const line: Loop = [lineSpan({ x, y: -20 }, { x, y: 30 })];
    const [cut = []] = cornerArcs([round, line]);
    expect(cutsOf(cut, round)).toEqual([{ x: expect.closeTo(9, 9), y: expect.closeTo(3, 9) }]);
    expect(spansLength(cut)).toBeCloseTo(14 * Math.PI, 9);
  });

  test('gets none of a line 0.005 mm off', () => {
    const line: Loop = [lineSpan({ x: 9.005, y: -20 }, { x: 9.005, y: 30 })];
    expect(cornerArcs([round, line])).toEqual([round, line]);
  });

  test('gets one towards a circle that it nearly touches, and so does that one', () => {
    const other = upright(2 + 7 + 4 + 0.002, 3, 4);
    const [cut = [], otherCut = []] = cornerArcs([round, other]);
    expect(cutsOf(cut, round)).toEqual([{ x: expect.closeTo(9, 9), y: expect.closeTo(3, 9) }]);
    expect(cutsOf(otherCut, other)).toEqual([{ x: expect.closeTo(9.002, 9), y: expect.closeTo(3, 9) }]);
  });

  test('gets one where it touches a wider circle from inside', () => {
    const [cut = []] = cornerArcs([round, upright(2 - 3.001, 3, 10)]);
    // The wider circle about (−1.001, 3) reaches x = 8.999.
    expect(cutsOf(cut, round)).toEqual([{ x: expect.closeTo(9, 9), y: expect.closeTo(3, 9) }]);
  });

  test('gets none at its own end, where there is a corner already', () => {
    const drawn = circle(2, 3, 7);
    const line: Loop = [lineSpan({ x: 9.001, y: -20 }, { x: 9.001, y: 30 })];
    expect(cornerArcs([drawn, line])).toEqual([drawn, line]);
  });
});

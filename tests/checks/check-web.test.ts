/** Metal left under a floor, as planned and at worst: sums by hand. */
import { describe, expect, test } from 'vitest';
import type { Job } from '#job/job.ts';
import { rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { checkPart } from '#support/parts/check-part.ts';

function webs(
  depths: readonly [number, number],
  stock: Partial<Job['stock']>,
  minWeb = 0.5,
  rateSpread = 0.05,
) {
  return checkPart({
    sheet: rectangle(-60, -60, 200, 120),
    outlines: [roundedRectangle(0, 0, 60, 60, 8), roundedRectangle(80, 0, 140, 60, 8)],
    depths: [
      [30, 30, depths[0]],
      [110, 30, depths[1]],
    ],
    stock,
    rateSpread,
    rules: { minWeb },
  }).filter(({ code }) => code.startsWith('web-'));
}

describe('(web-too-thin)', () => {
  test('in a sheet that thins from 6.2 to 3.6 mm the floor over the thin end is judged by its own sheet', () => {
    const thickness = { from: { x: -60, y: 0 }, to: { x: 200, y: 0 }, fromValue: 6.2, toValue: 3.6 };
    // At x = 140 there are 6.2 − 200 / 100 = 4.2 mm; at x = 60, 5.
    const [reported] = webs([2.9, 2.9], { thickness, minus: 0.02 }, 1.35);
    expect(reported?.code).toBe('web-too-thin');
    expect(reported?.facts).toEqual({
      web: expect.closeTo(1.3, 9),
      limit: 1.35,
      thickness: expect.closeTo(4.2, 9),
      level: 2.9,
    });
    expect(reported?.place.regions).toHaveLength(2);
    // Only the left one is so deep: 5 − 2.9 is enough.
    expect(webs([2.9, 1.5], { thickness, minus: 0.02 }, 1.35)).toEqual([]);
  });

  test('each stage by itself, at the place of its first region', () => {
    const found = webs([5.7, 5.6], { minus: 0, thickness: 6 }, 0.5);
    expect(found.map(({ code, facts }) => [code, facts])).toEqual([
      ['web-too-thin', { web: expect.closeTo(0.3, 9), limit: 0.5, thickness: 6, level: 5.7 }],
      ['web-too-thin', { web: expect.closeTo(0.4, 9), limit: 0.5, thickness: 6, level: 5.6 }],
    ]);
    const [left, right] = found.map(({ place }) => place.at?.x ?? Number.NaN);
    expect(left).toBeLessThan(61);
    expect(right).toBeGreaterThan(79);
  });
});

describe('(web-thin-at-worst)', () => {
  test('a web just as thin as allowed is thin at worst only: a sheet 0.07 too thin, a bath 4 % too fast', () => {
    const [reported] = webs([5.5, 1], { thickness: 6, minus: 0.07 }, 0.5, 0.04);
    expect(reported?.code).toBe('web-thin-at-worst');
    expect(reported?.facts).toEqual({
      worst: expect.closeTo(0.5 - 0.07 - 0.22, 9),
      web: 0.5,
      limit: 0.5,
      sheetMinus: 0.07,
      fast: expect.closeTo(0.22, 9),
      level: 5.5,
    });
    expect(reported?.place.at?.x).toBeLessThan(61);
    expect(reported?.place.regions).toHaveLength(1);
  });
});

import { expect, test } from 'vitest';
import { areaByGrowth } from '#front/volumes/area-by-growth.ts';
import { integrateDepth } from '#front/volumes/integrate-depth.ts';

const RANGE = { shallower: 0.3, deeper: 1.7 };
/** Of a wall with factor 1.2 whose floor lies at 1.7 mm, opened at the surface. */
const growth = (depth: number): number => 1.2 * Math.sqrt(1.7 ** 2 - depth ** 2);

function counted(area: (depth: number) => number) {
  const asked: number[] = [];
  return {
    asked,
    area: (depth: number) => {
      asked.push(depth);
      return area(depth);
    },
  };
}

test('a rectangle of 31.3 by 17.9 mm grows as Steiner says: four contours tell all others', () => {
  // Steiner: A + P r + π r².
  const steiner = (depth: number) =>
    31.3 * 17.9 + 2 * (31.3 + 17.9) * growth(depth) + Math.PI * growth(depth) ** 2;
  const { asked, area } = counted(steiner);
  const grown = areaByGrowth(area, growth, RANGE);
  for (const depth of [0.31, 0.7, 1.23, 1.69]) expect(grown(depth)).toBeCloseTo(steiner(depth), 8);
  expect(asked).toHaveLength(4);
  expect(asked.every((depth) => depth > 0.3 && depth < 1.7)).toBe(true);
});

test('where an island vanishes on the way each contour is asked for', () => {
  // A disk of 0.8 mm of maskant in the middle, undercut from all sides.
  const island = (depth: number) =>
    200 - Math.PI * Math.max(0, 0.8 - growth(depth)) ** 2 + 11.7 * growth(depth);
  const { asked, area } = counted(island);
  const grown = areaByGrowth(area, growth, RANGE);
  const share = { share: 1e-7 };
  expect(integrateDepth(grown, RANGE, share)).toBe(integrateDepth(island, RANGE, share));
  // None is asked for twice.
  expect(asked.length).toBe(new Set(asked).size);
  expect(asked.length).toBeGreaterThan(9);
});

test('a border that does not grow tells nothing: each contour is asked for', () => {
  const { asked, area } = counted((depth) => 40 - depth);
  const grown = areaByGrowth(area, () => 0.4, RANGE);
  expect(grown(0.5)).toBe(39.5);
  expect(asked).toHaveLength(5);
});

import { expect, test } from 'vitest';
import { integrateDepth } from '#front/volumes/integrate-depth.ts';

test('a quarter of an ellipsoid’s area over depth: ∫ √(D² − z²) from 0.6 to 2.3 by its closed form', () => {
  const deeper = 2.3;
  const primitive = (z: number) =>
    (z * Math.sqrt(deeper ** 2 - z ** 2) + deeper ** 2 * Math.asin(z / deeper)) / 2;
  const found = integrateDepth(
    (z) => Math.sqrt(deeper ** 2 - z ** 2),
    { shallower: 0.6, deeper },
    { share: 1e-9 },
  );
  expect(found).toBeCloseTo(primitive(deeper) - primitive(0.6), 9);
});

test('a corner within the range is closed in on until both sums agree', () => {
  const area = (z: number) => 40 + 9 * Math.max(0, z - 1.234);
  const exact = 40 * 2.1 + (9 * (2.1 - 1.234) ** 2) / 2;
  const range = { shallower: 0, deeper: 2.1 };
  expect(Math.abs(integrateDepth(area, range, { share: 1e-9 }) - exact)).toBeLessThan(1e-7);
  const rough = integrateDepth(area, range, { share: 1e-9, allowed: 10 });
  expect(Math.abs(rough - exact)).toBeGreaterThan(1e-4);
});

test('a leap, where one of two walls in line passes the other, takes no more looks than its height asks for', () => {
  const leap = 0.77;
  const exact = 40 * 1.9 + 4.5 * (1.9 - leap);
  let looks = 0;
  const area = (z: number) => {
    looks++;
    return z < leap ? 40 : 44.5;
  };
  const found = integrateDepth(area, { shallower: 0, deeper: 1.9 }, { share: 1e-9, allowed: 0.02 });
  expect(Math.abs(found - exact)).toBeLessThan(0.02);
  expect(looks).toBeLessThan(180);
});

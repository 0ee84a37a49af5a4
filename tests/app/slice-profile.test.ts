import { expect, test } from 'vitest';
import { sliceProfile } from '#app/help/slice-profile.ts';

test('M2.2 the slice of the help page: an opening of 4 mm, 2 mm deep, is 8 mm wide at the surface', () => {
  const slice = sliceProfile([{ from: 3, to: 7, cut: 2 }], { width: 10 });
  const etched = slice.filter(({ depth }) => depth > 0);
  expect(etched.at(0)?.x).toBeCloseTo(1.05, 6);
  expect(etched.at(-1)?.x).toBeCloseTo(8.95, 6);
  expect(slice.find(({ x }) => Math.abs(x - 2) < 1e-9)?.depth).toBeCloseTo(Math.sqrt(3), 6);
});

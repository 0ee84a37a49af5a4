import { expect, test } from 'vitest';
import { followSelection } from '#app/state/follow-selection.ts';
import type { RegionShape } from '#app/state/region-shape.ts';

const shapes = (...ids: string[]) => ids.map((id) => ({ region: { id } }) as RegionShape);

test('a picked pocket that becomes a taper stays picked, all its strips', () => {
  expect(followSelection(['R07'], shapes('R01', 'R07.1', 'R07.2'))).toEqual(['R07.1', 'R07.2']);
});

test('a picked strip whose pocket is one again stays picked as the pocket', () => {
  expect(followSelection(['R07.2', 'R01'], shapes('R01', 'R07'))).toEqual(['R07', 'R01']);
});

test('what is there stays as it was, in its order; what is gone is dropped', () => {
  const picked = ['R03', 'R01'];
  expect(followSelection(picked, shapes('R01', 'R02', 'R03'))).toBe(picked);
  expect(followSelection(['R09'], shapes('R01'))).toEqual([]);
});

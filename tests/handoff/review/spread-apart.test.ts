/** Labels beside an axis that come too near. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spreadApart } from '#handoff/review/spread-apart.ts';

test('labels that have room stay; those too near part evenly about their middle', () => {
  expect(spreadApart([40, 20, 5], { pitch: 4, low: 0, high: 50 })).toEqual([40, 20, 5]);
  expect(spreadApart([21, 20, 5], { pitch: 4, low: 0, high: 50 })).toEqual([22.5, 18.5, 5]);
  // At the end of the axis they go inwards.
  expect(spreadApart([50, 49], { pitch: 4, low: 0, high: 50 })).toEqual([50, 46]);
});

test('always a pitch apart, in order from above and inside the room', () => {
  const places = fc.array(fc.double({ min: 0, max: 60, noNaN: true }), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(places, (given) => {
      const spread = spreadApart(given, { pitch: 5, low: 0, high: 60 });
      const order = given.map((_, index) => index).sort((a, b) => (given[b] ?? 0) - (given[a] ?? 0));
      order.slice(1).forEach((index, before) => {
        const above = spread[order[before] ?? 0] ?? 0;
        expect(above - (spread[index] ?? 0)).toBeGreaterThan(5 - 1e-9);
      });
      for (const place of spread) {
        expect(place).toBeGreaterThan(-1e-9);
        expect(place).toBeLessThan(60 + 1e-9);
      }
    }),
  );
});

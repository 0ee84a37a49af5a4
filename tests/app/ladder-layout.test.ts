import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeRows, roundStep, scaleTicks } from '#app/views/ladder/ladder-layout.ts';
import { itemAt } from '#geometry/assert.ts';

describe('rows of words beside the ladder', () => {
  it('stand at their own height where there is room', () => {
    expect(
      placeRows(
        [
          { wanted: 50, height: 20 },
          { wanted: 200, height: 40 },
        ],
        400,
      ),
    ).toEqual([40, 180]);
  });

  it('share the shift when two levels are a tenth of a millimetre apart', () => {
    expect(
      placeRows(
        [
          { wanted: 100, height: 40 },
          { wanted: 104, height: 40 },
        ],
        400,
      ),
    ).toEqual([62, 102]);
  });

  it('never overlap, keep their order and stay inside, however many levels there are', () => {
    const rows = fc.array(
      fc.record({ wanted: fc.double({ min: 0, max: 600, noNaN: true }), height: fc.constantFrom(20, 40) }),
      {
        minLength: 1,
        maxLength: 20,
      },
    );
    fc.assert(
      fc.property(rows, (unsorted) => {
        const sorted = [...unsorted].sort((a, b) => a.wanted - b.wanted);
        const total = sorted.reduce((sum, row) => sum + row.height, 0);
        const room = Math.max(600, total);
        const tops = placeRows(sorted, room);
        let below = -1e-6;
        sorted.forEach((row, index) => {
          expect(itemAt(tops, index)).toBeGreaterThanOrEqual(below);
          below = itemAt(tops, index) + row.height - 1e-6;
        });
        expect(below).toBeLessThanOrEqual(room);
      }),
    );
  });
});

describe('a scale', () => {
  it('has round steps', () => {
    expect(scaleTicks(4.06, 10)).toEqual([0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4]);
    expect(roundStep(0.03)).toBeCloseTo(0.05, 12);
    expect(roundStep(20)).toBe(20);
    expect(roundStep(70)).toBe(100);
  });
});

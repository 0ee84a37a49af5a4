import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cutFrame } from '#geometry/loops/cut-across.ts';
import { loopsArea, type Span, spanLength } from '#geometry/span.ts';
import { SAME_PLACE } from '#geometry/tolerances.ts';
import { type RegionCuts, splitRegions } from '#part/split-regions.ts';
import { arrangementFaults } from '#support/geometry/arrangement-faults.ts';
import { partOf } from '#support/parts/part-of.ts';
import { randomPart, randomSheet } from '#support/random-parts/random-part.ts';

/** A cut across the tip of a needle can be shorter than two places are told apart; it then cuts nothing off. */
function isCutClean(cuts: readonly Span[]): boolean {
  return cuts.every((cut) => spanLength(cut) > 4 * SAME_PLACE);
}

test('M4.5 regions cut across any way stay a sound map, and their parts add up to them (random parts)', {
  tags: ['long'],
}, () => {
  const cutting = fc.record({
    part: randomPart,
    degrees: fc.integer({ min: 0, max: 359 }),
    shares: fc.uniqueArray(fc.integer({ min: 1, max: 99 }), { minLength: 1, maxLength: 4 }),
    every: fc.integer({ min: 1, max: 3 }),
  });
  fc.assert(
    fc.property(cutting, ({ part: { outlines }, degrees, shares, every }) => {
      const part = partOf({ sheet: randomSheet, outlines });
      const turn = (degrees * Math.PI) / 180;
      const direction = { x: Math.cos(turn), y: Math.sin(turn) };
      const cutsOf = new Map(
        part.regions
          .filter((_, index) => index % every === 0)
          .map(({ id, loops }): [string, RegionCuts] => {
            const frame = cutFrame(loops, direction);
            const cuts = shares.flatMap((share) =>
              frame.cutsAt(frame.from + ((frame.to - frame.from) * share) / 100),
            );
            return [id, { cuts, rank: () => 0 }];
          }),
      );
      const { part: split, partsOf } = splitRegions(part, cutsOf);
      // A cut has no source of the drawing; all else of a map must hold.
      const faults = arrangementFaults(split.arrangement).filter((fault) => !fault.endsWith('has sources '));
      expect(faults).toEqual([]);
      for (const { id, area } of part.regions) {
        const parts = partsOf.get(id) ?? split.regions.filter((each) => each.id === id);
        expect(parts.length).toBeGreaterThan(0);
        expect(parts.reduce((sum, each) => sum + each.area, 0)).toBeCloseTo(area, 2);
        if (!cutsOf.has(id)) expect(parts).toHaveLength(1);
        else if (isCutClean(cutsOf.get(id)?.cuts ?? []))
          expect(partsOf.get(id)?.length ?? 0).toBeGreaterThan(shares.length);
      }
      for (const [index, { face, loops, area }] of split.regions.entries()) {
        expect(split.regionOfFace[face]).toBe(index);
        expect(loopsArea(loops)).toBeCloseTo(area, 6);
      }
      expect(new Set(split.regions.map(({ id }) => id)).size).toBe(split.regions.length);
    }),
    { numRuns: 150 },
  );
});

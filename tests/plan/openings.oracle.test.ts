import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { EdgeDatum } from '#job/job.ts';
import { compareOpenings } from '#support/geometry/compare-openings.ts';
import { cutFaults } from '#support/geometry/cut-faults.ts';
import { planOf, randomPart, TIGHT_SHEET } from '#support/random-parts/random-part.ts';

const edgeDatum = fc.constantFrom<EdgeDatum>('shallow-edge', 'shallow-edge', 'mid-wall', 'deep-foot');

test('M3.1 M3.2 openings and pieces of random parts agree with buffers of an independent library (JSTS 2.12.1)', () => {
  fc.assert(
    fc.property(randomPart, edgeDatum, fc.boolean(), (part, datum, isTight) => {
      const plan = planOf(part, datum, isTight ? TIGHT_SHEET : undefined);
      expect(cutFaults(plan)).toEqual([]);
      compareOpenings(plan, { etchFactor: plan.etchFactor, edgeDatum: datum });
    }),
    {
      numRuns: Number(process.env['RUNS'] ?? 200),
      interruptAfterTimeLimit: 500_000,
    },
  );
});

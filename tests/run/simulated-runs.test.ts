/** 200 simulated runs either way of masking: what corrections are worth, and whether the budget keeps its word (docs/verification.md). */
import { beforeAll, describe, expect, test } from 'vitest';
import { toleranceBudgets } from '#checks/tolerance-budget.ts';
import { makePlan } from '#plan/make-plan.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { type SimulatedRun, simulateRun, threeFloors } from '#support/jobs/simulated-run.ts';
import { partOf } from '#support/parts/part-of.ts';

describe.each([
  { masking: 'peel-next', blind: 0.105 },
  { masking: 're-mask', blind: 0.105 },
] as const)(
  '200 simulated runs, $masking',
  {
    tags: ['long'],
  },
  ({ masking, blind }) => {
    let runs: readonly SimulatedRun[] = [];
    beforeAll(() => {
      runs = Array.from({ length: 200 }, (_, seed) => simulateRun(masking, seed + 1));
    });
    const share = (key: 'corrected' | 'blind') => runs.filter((run) => run[key]).length / runs.length;

    test('M7 nearly all end inside tolerance with corrections, few without', () => {
      expect(share('corrected')).toBeGreaterThanOrEqual(0.99);
      expect(share('blind')).toBeCloseTo(blind, 9);
    });

    test('M6.3 every floor stays within what the budget of a gauged run says', () => {
      const { regions, rate, rateSpread } = threeFloors(masking);
      const part = partOf({ outlines: regions.map((_, i) => rectangle(100 * i, 0, 100 * i + 60, 60)) });
      const asked = new Map(
        part.regions.map(({ id }, i) => [id, regions[i]?.asked ?? { depth: 0, plus: 0, minus: 0 }]),
      );
      // The simulated run keeps its minutes.
      const process = { ...plainJob().process, masking, rate, rateSpread, timing: 0 };
      const job = { ...plainJob(), process };
      const budgets = toleranceBudgets(makePlan({ part, asked, job }), job);
      expect(budgets.map(({ level }) => level)).toEqual(regions.map(({ level }) => level));
      for (const [floor, { gauged }] of budgets.entries()) {
        const held = (limit: number) =>
          runs.filter(({ off }) => (off[floor] ?? 1) <= limit).length / runs.length;
        expect(held(gauged.tooDeep.likely)).toBeGreaterThan(0.9);
        expect(held(gauged.tooDeep.worst)).toBe(1);
        // Nor does it promise too little: what it says is not three times what comes out.
        expect(held(gauged.tooDeep.likely / 3)).toBeLessThan(0.95);
      }
    });
  },
);

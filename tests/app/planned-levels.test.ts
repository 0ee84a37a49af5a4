/** Levels as the ladder shows them, of a part with more regions than a call takes arguments. */
import { expect, test } from 'vitest';
import { plannedLevelsOf } from '#app/state/planned-levels.ts';
import type { ShownPlan, ShownRegion, ShownStage } from '#job/formats/plan-file.ts';

test('200,000 holes of one level accept what all of them accept', () => {
  const regions = Array.from({ length: 200_000 }, (_, n) => ({
    id: `R${n}`,
    level: 0.1,
    area: 0.3,
    asked: { depth: 0.1, plus: n === 7 ? 0.012 : 0.02, minus: n === 150_000 ? 0.015 : 0.03 },
  })) as Partial<ShownRegion>[] as ShownRegion[];
  const stage = {
    number: 1,
    level: 0.1,
    regions: regions.map(({ id }) => id),
  } as Partial<ShownStage> as ShownStage;
  const [level, ...more] = plannedLevelsOf({ regions, stages: [stage] } as Partial<ShownPlan> as ShownPlan);
  expect(more).toEqual([]);
  expect(level?.regions).toHaveLength(200_000);
  expect(level?.area).toBeCloseTo(60_000, 3);
  expect(level?.accepted).toEqual({ from: 0.1 - 0.015, to: 0.1 + 0.012 });
});

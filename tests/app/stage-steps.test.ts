import { expect, it } from 'vitest';
import { stageSteps } from '#app/state/stage-steps.ts';
import type { ShownPlan, ShownStage } from '#job/formats/plan-file.ts';

function stage(number: number, etch: number, startMinute: number): ShownStage {
  const rest = { color: '#808080', regions: [], sealed: [], piece: [], opening: [], lines: [] };
  return { number, level: 0, etch, minutes: etch / 0.03, startMinute, ...rest };
}

it('the deepest floor is in the bath throughout, each later one from its own peel on', () => {
  // 3.0, 2.2 and 1.2 mm at 0.03 mm/min: 0.8, 1.0 and 1.2 mm a stage.
  const stages = [stage(1, 0.8, 0), stage(2, 1, 26.667), stage(3, 1.2, 60)];
  const steps = stageSteps({ stages, masking: 'peel-next' } as unknown as ShownPlan);
  expect(steps.map(({ bare }) => bare)).toEqual([[1], [1, 2], [1, 2, 3]]);
  expect(steps.map(({ to }) => Math.round(to * 100) / 100)).toEqual([26.67, 60, 100]);
  const after = steps.map(({ floors }) => floors.map((each) => Number(each.after.toFixed(6))));
  expect(after).toEqual([[0.8], [1.8, 1], [3, 2.2, 1.2]]);
  const before = steps.map(({ floors }) => floors.map((each) => Number(each.before.toFixed(6))));
  expect(before).toEqual([[0], [0.8, 0], [1.8, 1, 0]]);
});

it('with a new coat for each stage only the piece of the stage in the bath is bare, and no floor is reported', () => {
  const stages = [stage(1, 0.8, 0), stage(2, 1, 26.667)];
  const steps = stageSteps({ stages, masking: 're-mask' } as unknown as ShownPlan);
  expect(steps.map(({ bare }) => bare)).toEqual([[1], [2]]);
  expect(steps.map(({ floors }) => floors)).toEqual([[], []]);
});

import { test } from 'vitest';
import { judgeVariants } from '#support/random-drawings/judge-variants.ts';
import { expectTrials, trialPlan } from '#support/trials.ts';

test('M3 a hundred parts, however they are drawn, have the same lines, findings and region ids', async () => {
  await expectTrials('drawn-otherwise', trialPlan({ cases: 100 }), judgeVariants);
});

import { test } from 'vitest';
import { judgeVariants } from '#support/random-drawings/judge-variants.ts';
import { expectTrials, trialPlan } from '#support/seeds/trials.ts';

test('M3 the same part, however it is drawn, has the same lines, findings and region ids', async () => {
  await expectTrials('drawn-otherwise', trialPlan({ cases: 200 }), judgeVariants);
});

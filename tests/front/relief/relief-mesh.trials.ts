import { expect, test } from 'vitest';
import { solidJudge } from '#support/random-parts/judge-part.ts';
import { expectTrials, trialPlan } from '#support/seeds/trials.ts';

test('M2.7 solids and removed volumes of random parts are right, or held back once in a thousand', async () => {
  const { judge } = await solidJudge();
  const plan = trialPlan({ cases: 250 });
  const held: string[] = [];
  await expectTrials('solids', plan, (seed, index) => {
    const { faults, isHeldBack } = judge(seed, index);
    if (isHeldBack) held.push(`seed ${seed} case ${index}`);
    return faults.map((what) => ({ what }));
  });
  if (held.length > (plan.seeds.length * plan.cases) / 1000) expect(held).toEqual([]);
});

import { test } from 'vitest';
import { judgeOpenings } from '#support/random-drawings/judge-openings.ts';
import { expectTrials, trialPlan } from '#support/seeds/trials.ts';

test('M3.1 M3.2 openings of parts far from the origin agree with buffers of an independent library within 5 µm', async () => {
  await expectTrials('openings', trialPlan({ cases: 100 }), judgeOpenings);
});

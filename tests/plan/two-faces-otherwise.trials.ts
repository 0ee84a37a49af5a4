import { test } from 'vitest';
import { judgeTwoFaces } from '#support/random-drawings/judge-two-faces.ts';
import { expectTrials, trialPlan } from '#support/seeds/trials.ts';

test('M9.2 the same part of two faces, however it is drawn and whichever face is the near one, has the same lines, findings and metal', async () => {
  await expectTrials('two-faces-otherwise', trialPlan({ cases: 100 }), judgeTwoFaces);
});

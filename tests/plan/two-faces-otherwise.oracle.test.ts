import { expect, test } from 'vitest';
import { judgeTwoFaces } from '#support/random-drawings/judge-two-faces.ts';
import { expectTrials, trialPlan } from '#support/seeds/trials.ts';

test('M9.2 twenty parts of two faces, however they are drawn and whichever face is the near one, have the same lines, findings and metal', async () => {
  await expectTrials('two-faces-otherwise', trialPlan({ cases: 20 }), judgeTwoFaces);
});

test.each([
  ['a hole cut out whose circle is drawn in pieces', 1, 20],
  ['a curve that the edge of the sheet cuts to a wedge', 13, 24],
])('M9.2 nor does one with %s (seed %d, case %d)', async (_, seed, index) => {
  expect(await judgeTwoFaces(seed, index)).toEqual([]);
});

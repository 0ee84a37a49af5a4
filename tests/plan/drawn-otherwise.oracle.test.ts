import { expect, test } from 'vitest';
import { judgeVariants } from '#support/random-drawings/judge-variants.ts';
import { expectTrials, trialPlan } from '#support/seeds/trials.ts';

test('M3 a hundred parts, however they are drawn, have the same lines, findings and region ids', async () => {
  await expectTrials('drawn-otherwise', trialPlan({ cases: 100 }), judgeVariants);
});

test.each([
  ['a line that hops between two carriers a micrometre apart', 105, 122],
  ['an island between two rounds that touch', 106, 168],
  ['a round front that ends just short of a straight one', 6, 14],
  ['a long strip of just the width asked', 201, 5],
  ['a corner of 6 by 3 µm beyond an arc', 206, 68],
  ['a stub of a micrometre where a round and a straight meet', 226, 72],
  ['an even strip whose sides fall into many arcs', 227, 58],
  ['a shallow stage that ends with deeper ones at a corner of the sheet', 32, 33],
  ['land that lies in one group with a deeper pocket or not', 51, 23],
])('M3 nor does one with %s (seed %d, case %d)', async (_, seed, index) => {
  expect(await judgeVariants(seed, index)).toEqual([]);
});

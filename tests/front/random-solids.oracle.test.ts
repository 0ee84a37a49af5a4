/** A few of what `npm run trials -- relief-mesh` tries on thousands. */
import { expect, test } from 'vitest';
import { solidJudge } from '#support/random-parts/judge-part.ts';
import { PROPERTY_SEED } from '#support/seeds/seed-of-run.ts';

const CASES = 100;

test('M2.7 solids and removed volumes of 100 random parts are right, and none is held back', async () => {
  const { judge } = await solidJudge();
  const wrong: string[] = [];
  for (let number = 0; number < CASES; number++) {
    const { faults, isHeldBack } = judge(PROPERTY_SEED, number);
    if (isHeldBack) wrong.push(`case ${number} is held back`);
    wrong.push(...faults.map((fault) => `case ${number}: ${fault}`));
  }
  expect(wrong).toEqual([]);
});

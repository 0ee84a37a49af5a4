/**
 * Writings killed one after another, each at a call of the file system drawn at random, also while it puts back what the one
 * before left: no folder ever holds two sets mixed, nor `plan.json` beside a set that is not whole.
 * `npm run trials -- killed-writes --cases 500`: as many kills.
 */
import { rmSync } from 'node:fs';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { stateOf, type WritingRig, writingRig } from '#support/process/stopped-writing.ts';

const KILLS = Number(process.env['CASES'] ?? 500);
/** No change of these sets takes more calls. */
const MOST_CALLS = 45;

let rig: WritingRig & { readonly home: string };
beforeAll(async () => {
  rig = await writingRig();
});
afterAll(() => rmSync(rig.home, { recursive: true }));

it(`${KILLS} kills aimed at the writing leave no mixed set`, () => {
  const rows = fc.sample(
    fc.array(fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 0, max: MOST_CALLS })), {
      minLength: 1,
      maxLength: 4,
    }),
    { seed: Number(process.env['SEED'] ?? 1), numRuns: KILLS * 2 },
  );
  let kills = 0;
  let mixed = 0;
  let unclean = 0;
  for (const row of rows) {
    if (kills >= KILLS) break;
    const folder = rig.newFolder();
    rig.write(folder, 41);
    for (const [set, call] of row) {
      if (rig.write(folder, set, { kind: 'kill', call }).wasKilled) kills++;
      const { sets, hasPlan, isWhole } = stateOf(folder);
      if (sets.length > 1 || hasPlan !== isWhole) mixed++;
    }
    rig.write(folder, 42);
    const { sets, isWhole, isClean } = stateOf(folder);
    if (!isWhole || !isClean || sets[0] !== 42) unclean++;
    rmSync(folder, { recursive: true });
  }
  console.log(`${kills} kills: ${mixed} mixed sets, ${unclean} folders that the next run did not put right`);
  expect(kills).toBeGreaterThanOrEqual(KILLS);
  expect({ mixed, unclean }).toEqual({ mixed: 0, unclean: 0 });
});

import { test } from 'vitest';
import { judgeCuts } from '#support/random-drawings/judge-cuts.ts';
import { expectTrials, trialPlan } from '#support/seeds/trials.ts';

test("M3.2 every border of a piece is cut once, the sheet's edge never", async () => {
  await expectTrials('cut-once', trialPlan({ cases: 200 }), judgeCuts);
});

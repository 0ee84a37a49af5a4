/** Checking an 800-pocket plan: processor time, first and later, and as a share of making and measuring it. Prints; judges nothing. */
import { test } from 'vitest';
import { checkMaking } from '#checks/check-making.ts';
import { makePlan } from '#plan/make-plan.ts';
import { measurePlan } from '#run/measure-plan.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';
import { pocketGrid } from '#support/parts/pocket-grid.ts';

test('findings about making 800 nested pockets', () => {
  const { sheet, outlines, depths } = pocketGrid(40, 20);
  const part = partOf({ sheet, outlines });
  const job = plainJob();
  const asked = askedAt(part, depths);
  for (let round = 0; round < 3; round++) {
    const [plan, planned] = timed(() => makePlan({ part, asked, job }));
    const [{ groups, regions: reached }, measured] = timed(() => measurePlan(plan, job));
    const [findings, checked] = timed(() => checkMaking({ plan, job, reached }, groups));
    console.log(
      `plan ${planned.toFixed(0)} ms, measures ${measured.toFixed(0)} ms, checks ${checked.toFixed(0)} ms (${findings.length} findings)`,
    );
  }
});

/** Milliseconds of processor time, all threads. */
function timed<Result>(work: () => Result): [Result, number] {
  const before = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(before);
  return [result, (user + system) / 1000];
}

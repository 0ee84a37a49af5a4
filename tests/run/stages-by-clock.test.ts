/** M6.3: a stage so thin that a reading would say nothing runs by the clock. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { assert } from '#geometry/assert.ts';
import { runJob } from '#run/run-job.ts';
import { stagesByClock } from '#run/stages-by-clock.ts';

const cover = JSON.parse(readFileSync('samples/gauge-pod-cover.job.json', 'utf8'));

async function byClock(job: object): Promise<readonly number[]> {
  const { planFile } = await runJob({
    jobText: JSON.stringify(job),
    drawingName: cover.drawing,
    drawingBytes: readFileSync(`samples/${cover.drawing}`),
  });
  assert(planFile !== undefined, 'the cover has a plan');
  return [...stagesByClock(planFile)];
}

it('M6.3 stages of 0.8, 1.0 and 1.2 mm are gauged, one of 0.05 mm is not', async () => {
  expect(await byClock(cover)).toEqual([]);
  // The deepest floor, 3 mm, is then etched 0.05 mm before those that were 2.2.
  const requirements = cover.requirements.map((each: { depth?: number }) =>
    each.depth === 2.2 ? { ...each, depth: 2.95 } : each,
  );
  expect(await byClock({ ...cover, requirements })).toEqual([1]);
});

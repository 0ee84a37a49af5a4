/** How many stages of a review stand on a page. */
import { expect, test } from 'vitest';
import { paperRoom } from '#handoff/pdf/paper-book.ts';
import { partFrame } from '#handoff/pdf/part-frame.ts';
import { reviewPictureRoom } from '#handoff/review/stage-pages.ts';
import { makePlan } from '#plan/make-plan.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { partOf } from '#support/parts/part-of.ts';

function planOf(width: number, height: number) {
  const part = partOf({ sheet: rectangle(0, 0, width, height), outlines: [rectangle(9, 9, 30, 31)] });
  const asked = new Map(part.regions.map(({ id }) => [id, { depth: 0, plus: 0.07, minus: 0.05 }]));
  return makePlan({ part, asked, job: plainJob() });
}

test.each([
  { part: 'a square lid', width: 120, height: 120, stages: 2 },
  { part: 'a skin of 7 to 3', width: 1050, height: 450, stages: 2 },
  { part: 'a wing skin of 11 to 2', width: 1800, height: 327, stages: 3 },
  { part: 'a strip of 16 to 1', width: 1600, height: 100, stages: 4 },
])('$part has $stages stages on a page', ({ width, height, stages }) => {
  const plan = planOf(width, height);
  for (const paper of ['a4', 'letter'] as const) {
    const page = paperRoom(paper);
    const room = reviewPictureRoom(plan, paper);
    expect(Math.round(page.height / ((room.height ?? 0) + 40))).toBe(stages);
    // Not for drawing it much smaller than two of them.
    const two = partFrame(plan, { width: page.width, height: page.height / 2 - 40 });
    expect(partFrame(plan, room).scale).toBeGreaterThan(0.79 * two.scale);
  }
});

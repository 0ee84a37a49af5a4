/** Lines hardly longer than a blade, in the plan that is handed off. */
import { expect, test } from 'vitest';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { lineSpan } from '#geometry/span.ts';
import { resolveHandoff } from '#job/resolve/resolve-handoff.ts';
import { makePlan } from '#plan/make-plan.ts';
import { prepareHandoff } from '#run/prepare-handoff.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob, plainJobFile } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

test('scribe-line-stub: a line of 0.4 mm is reported with its place, one of 1.2 mm is not', () => {
  const job = plainJob();
  const part = partOf({ sheet: rectangle(0, 0, 200, 120), outlines: [rectangle(40, 30, 90, 80)] });
  const plan = makePlan({ part, asked: askedAt(part, [[60, 50, 2]]), job });
  const found = (length: number) => {
    const stub = { closed: false, spans: [lineSpan({ x: 130, y: 40 }, { x: 130 + length, y: 40 })] };
    const stages = plan.stages.map((stage) => ({ ...stage, lines: [...stage.lines, stub] }));
    const { findings } = prepareHandoff({
      choices: resolveHandoff({ ...plainJobFile, handoff: {} }, 'mm'),
      job,
      plan: { ...plan, stages },
      kit: () => makeContourKit(indexFront(frontOfPlan(plan, 6))),
      units: { job: 'mm', drawing: 'mm' },
    });
    return findings.filter(({ code }) => code === 'scribe-line-stub');
  };
  expect(found(1.2)).toEqual([]);
  expect(found(0.4)).toMatchObject([
    {
      facts: { lines: 1, shortest: expect.closeTo(0.4, 9), stage: 1, limit: 1 },
      place: { at: { x: 130, y: 40 } },
    },
  ]);
});

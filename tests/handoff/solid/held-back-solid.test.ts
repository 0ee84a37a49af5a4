import { expect, test } from 'vitest';
import { sayFinding } from '#findings/say-finding.ts';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { frontOfPlan } from '#front/front.ts';
import { indexFront } from '#front/front-index.ts';
import { lineSpan } from '#geometry/span.ts';
import { etchedSolid } from '#handoff/solid/etched-solid.ts';
import { resolveHandoff } from '#job/resolve/resolve-handoff.ts';
import { prepareHandoff } from '#run/prepare-handoff.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { handMadePlan } from '#support/parts/hand-made-plan.ts';

/** A plan whose first opening lacks a side: there is no front of it that a solid could be true to. */
function brokenPlan() {
  const [first, ...others] = handMadePlan.stages;
  if (first === undefined) throw new Error('there is a stage');
  const broken = [lineSpan({ x: 20, y: 30 }, { x: 45, y: 30 }), lineSpan({ x: 45, y: 30 }, { x: 30, y: 55 })];
  return { ...handMadePlan, stages: [{ ...first, opening: [broken] }, ...others] };
}

test('solid-held-back: neither GLB nor STL of a solid that its check refuses, and a finding with the reason', {
  tags: ['long'],
}, () => {
  const plan = brokenPlan();
  const job = plainJob();
  const kit = makeContourKit(indexFront(frontOfPlan(plan, 6)));
  const choices = resolveHandoff(
    {
      isobath: 1,
      drawing: 'plate.dxf',
      handoff: { files: ['glb', 'stl'] },
    } as unknown as Parameters<typeof resolveHandoff>[0],
    'mm',
  );
  const units = { job: 'mm', drawing: 'mm' } as const;
  const { made, findings } = prepareHandoff({ choices, job, plan, kit: () => kit, units });
  expect(made.solid).toBeUndefined();
  expect(findings).toMatchObject([
    { code: 'solid-held-back', severity: 'warn', facts: { of: 'files', trouble: 'volume' } },
  ]);
  const [held] = findings;
  if (held === undefined) throw new Error('a finding was expected');
  expect(sayFinding(held).reason).toContain('etched-part.glb and etched-part.stl are not written');
});

test('solid-held-back: the relief of such a front is not shown either', { tags: ['long'] }, () => {
  const plan = brokenPlan();
  const kit = makeContourKit(indexFront(frontOfPlan(plan, 6)));
  expect(etchedSolid(kit, { thickness: 6 }, { tolerance: 0.02 })).toMatchObject({
    trouble: { trouble: 'volume' },
  });
});

/** An earlier issue of a plan beside the present one: what changed, under the name of its file's hash. */
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { runJob } from '#run/run-job.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';

const run = (job: object, earlierPlanText?: string) =>
  runJob({
    jobText: JSON.stringify({ ...buoyLidJob, ...job }),
    drawingName: 'lid.dxf',
    drawingBytes: new TextEncoder().encode(buoyLidDrawing),
    earlierPlanText,
  });
const planText = async (job: object) => {
  const { files } = await run(job);
  return new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes);
};

describe('a plan and its earlier issue', () => {
  test('each change is listed, and said in a sentence', async () => {
    const earlier = await planText({});
    const requirements = buoyLidJob.requirements.map((each) =>
      each.layer === 'DEEP' ? { ...each, depth: 2.6 } : each,
    );
    const { since, planFile } = await run({ requirements }, earlier);
    expect(since?.planHash).toBe(createHash('sha256').update(earlier).digest('hex'));
    expect(since?.changes.length).toBeGreaterThan(0);
    expect(since?.said).toHaveLength(since?.changes.length ?? -1);
    expect(since?.said.join(' ')).toMatch(/2\.4.*2\.6/);
    expect(planFile?.stages[0]?.level).toBe(2.6);
  });

  test('the same plan again has none; and without an earlier one nothing is said of any', async () => {
    const { since } = await run({}, await planText({}));
    expect([since?.changes, since?.said]).toEqual([[], []]);
    expect(await run({})).not.toHaveProperty('since');
  });

  test('plan-file-unusable: what is no plan ends the run', async () => {
    const { findings, planFile } = await run({}, '{"format":"isobath-job"}');
    expect(findings.map(({ code }) => code)).toEqual(['plan-file-unusable']);
    expect(planFile).toBeUndefined();
  });
});

import { describe, expect, it } from 'vitest';
import { itemAt } from '#geometry/assert.ts';
import { type EarlyPlan, type RunResult, runJob } from '#run/run-job.ts';
import { createRunMemory } from '#run/run-memory.ts';
import { RunCancelled } from '#run/run-options.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';

const input = {
  jobText: JSON.stringify(buoyLidJob),
  drawingName: buoyLidJob.drawing,
  drawingBytes: new TextEncoder().encode(buoyLidDrawing),
};

describe('a plan reported before it is measured', () => {
  it('is the plan of the file, once, and the very same contours on a second run', async () => {
    const memory = createRunMemory();
    const reported: EarlyPlan[] = [];
    const steps: string[] = [];
    const run = () =>
      runJob(input, {
        memory,
        onPlan: (early) => {
          reported.push(early);
          steps.push('plan');
        },
        progress: (_, what) => steps.push(what),
      });
    const { planFile } = await run();
    expect(reported).toHaveLength(1);
    // What the file has besides is measured, or comes with the hand-off.
    const { provenance, totals, ...drawn } = itemAt(reported, 0).shown;
    expect(planFile).toMatchObject({ ...drawn, totals });
    expect(planFile?.provenance).toEqual(expect.arrayContaining([...provenance]));
    expect(steps.indexOf('plan')).toBeLessThan(steps.indexOf('measuring what will be etched'));
    await run();
    expect(reported[1]?.shown.stages[0]?.lines[0]).toBe(reported[0]?.shown.stages[0]?.lines[0]);
  });

  it('may be the last thing reported of a run that is cancelled then', async () => {
    const signal = { aborted: false };
    const steps: string[] = [];
    const cancelled = runJob(input, {
      signal,
      onPlan: () => {
        signal.aborted = true;
      },
      progress: (_, what) => steps.push(what),
    });
    await expect(cancelled).rejects.toBeInstanceOf(RunCancelled);
    expect(steps).not.toContain('writing the files');
  });

  it('is followed by figures and findings before a file is written, those of the whole run', async () => {
    const judged: Omit<RunResult, 'files'>[] = [];
    const steps: string[] = [];
    const { files, kit, ...result } = await runJob(input, {
      onPlan: () => steps.push('plan'),
      onJudged: ({ kit: own, ...each }) => {
        judged.push(each);
        steps.push('judged');
      },
      progress: (_, what) => steps.push(what),
    });
    expect(judged).toEqual([result]);
    expect(files.length).toBeGreaterThan(0);
    const order = ['plan', 'checking that it can be made', 'judged', 'writing the files'];
    expect(steps.filter((step) => order.includes(step))).toEqual(order);
  });

  it.each([
    ['as deep as the sheet', { depth: 4.06 }, 'depth-beyond-stock'],
    ['thicker than the sheet', { thickness: 4.3 }, 'thickness-beyond-stock'],
  ])(
    'is that of the other requirements where one asks for a floor %s: seen, and nothing comes of it',
    async (_, asked, code) => {
      const reported: EarlyPlan[] = [];
      const [first, ...others] = buoyLidJob.requirements;
      const job = { ...buoyLidJob, stock: { ...buoyLidJob.stock, thickness: 4.06 } };
      const run = (requirements: readonly object[]) =>
        runJob(
          { ...input, jobText: JSON.stringify({ ...job, requirements }) },
          { onPlan: (early) => reported.push(early) },
        );
      const result = await run([{ layer: first?.layer, ...asked }, ...others]);
      expect(result.planFile).toBeUndefined();
      expect(result.files).toEqual([]);
      expect(result.findings.filter(({ severity }) => severity === 'stop')).toMatchObject([{ code }]);
      await run(others);
      const [seen, without] = reported;
      expect(seen?.shown.regions.length).toBeGreaterThan(0);
      expect(seen?.shown.regions).toEqual(without?.shown.regions);
      expect(seen?.shown.stages).toEqual(without?.shown.stages);
    },
  );

  it('is not reported where there is none', async () => {
    const reported: EarlyPlan[] = [];
    await runJob({ ...input, jobText: '{' }, { onPlan: (early) => reported.push(early) });
    expect(reported).toEqual([]);
  });
});

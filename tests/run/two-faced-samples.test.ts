/** The samples that are etched on both faces: what they are planned to, and what is left. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { depthsOf } from '#run/depth-job.ts';
import { etchedPart } from '#run/etched-part.ts';
import { type RunResult, runJob } from '#run/run-job.ts';

function run(name: string): Promise<RunResult> {
  return runJob({
    jobText: readFileSync(`samples/${name}.job.json`, 'utf8'),
    drawingName: `${name}.dxf`,
    drawingBytes: readFileSync(`samples/${name}.dxf`),
  });
}

function partOf({ plan, thickness, kit, farKit }: RunResult) {
  if (plan === undefined || thickness === undefined) throw new Error('it can be planned');
  return etchedPart(plan, thickness, kit, farKit);
}

const stopsAndWarnings = ({ findings }: RunResult) =>
  findings.filter(({ severity }) => severity !== 'note').map(({ code }) => code);

describe('the current-meter cover', () => {
  test('has a web of 0.8 mm in its window, 1.1 mm from either face', async () => {
    const cover = await run('current-meter-cover');
    expect(stopsAndWarnings(cover)).toEqual([]);
    expect(cover.planFile?.stages.map(({ level }) => level)).toHaveLength(3);
    const [window, board, groove] = depthsOf(partOf(cover), {
      points: Float64Array.of(127, 60, 60, 60, 21, 60),
    });
    expect(window?.thickness).toBeGreaterThan(0.8 - 0.12);
    expect(window?.thickness).toBeLessThan(0.8 + 0.12);
    expect(window?.depth).toBe(window?.far?.depth);
    expect(board?.far?.depth).toBe(0);
    expect(groove?.depth).toBe(0);
    expect(groove?.far?.depth).toBeCloseTo(0.8, 1);
  });
});

describe('the radiator panel', () => {
  test('is one stage: folds half through, vents and channel through, the panel on its tabs', async () => {
    const panel = await run('radiator-panel');
    expect(stopsAndWarnings(panel)).toEqual([]);
    expect(panel.planFile?.stages).toHaveLength(1);
    const [fold, vent, channel, tab] = depthsOf(partOf(panel), {
      points: Float64Array.of(26.5, 47, 44, 45, 30, 11.2, 40, 11.2),
    });
    expect(fold?.thickness).toBeGreaterThan(0.1);
    expect(fold?.far?.depth).toBe(0);
    expect([vent?.thickness, channel?.thickness, tab?.thickness]).toEqual([0, 0, 0.5]);
    // What is cut out leaves no floor: the folds alone, which are etched to the same level, have a tolerance to hold.
    const budgeted = new Set(panel.planFile?.budgets?.flatMap(({ regions }) => regions));
    const regions = panel.plan?.regions.filter(({ level }) => level > 0) ?? [];
    expect(regions.some(({ asked }) => asked.wall !== undefined)).toBe(true);
    for (const { id, asked } of regions)
      expect([id, budgeted.has(id)]).toEqual([id, asked.wall === undefined]);
  });
});
